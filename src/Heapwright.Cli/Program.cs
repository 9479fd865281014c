using System.Globalization;
using Heapwright.Cli;
using Heapwright.Cli.Commands;

// Whatever the machine's language, the same question gives the same bytes.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
return CommandLine.Run(args, CommandTable.All, new ProcessTerminal());
