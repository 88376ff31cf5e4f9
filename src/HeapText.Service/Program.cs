using System.CommandLine;
using HeapText.Service.Verbs;

var heaptext = new RootCommand("Guides farmers through making compost, by SMS and USSD.")
{
    MixVerb.Create(),
    RecipeVerb.Create(),
};
return await heaptext.Parse(args).InvokeAsync();
