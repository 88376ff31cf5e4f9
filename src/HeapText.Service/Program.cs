using System.CommandLine;
using HeapText.Service.Verbs;

var heaptext = new RootCommand("Guides farmers through making compost, by SMS and USSD.")
{
    MixVerb.Create(),
    RecipeVerb.Create(),
};
var parsed = heaptext.Parse(args);
return parsed.Errors.Count > 0 ? await parsed.InvokeAsync() is 0 ? 0 : 2 : await parsed.InvokeAsync();
