using System.CommandLine;

var heaptext = new RootCommand("Guides farmers through making compost, by SMS and USSD.");
return await heaptext.Parse(args).InvokeAsync();
