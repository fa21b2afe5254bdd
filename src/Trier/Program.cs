using System.CommandLine;

var root = new RootCommand("Trier: make, age, cut and taste cheese fairly, and say what was learned.");
return await root.Parse(args).InvokeAsync();
