using Trier.Commands;

return await CommandLine.RunAsync(args);
