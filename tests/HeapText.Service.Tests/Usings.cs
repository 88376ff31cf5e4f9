global using static HeapText.Service.Tests.TestBasics;
