package groundbass;

import groundbass.cli.AdminCommand;
import groundbass.cli.CheckCommand;
import groundbass.cli.ConvertCommand;
import groundbass.cli.EnvironmentDefaults;
import groundbass.cli.RenderCommand;
import groundbass.cli.ServeCommand;
import groundbass.cli.Version;
import java.util.Map;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** The command line. Each subcommand is a class of its own, named in {@link #commandLine}. */
@Command(
        name = "groundbass",
        mixinStandardHelpOptions = true,
        description = "Publishes one groove lesson a week: a line written once becomes page, sheet, MIDI and audio.")
public final class Main {
    private Main() {}

    public static void main(String[] args) {
        System.exit(commandLine(System.getenv()).execute(args));
    }

    public static CommandLine commandLine(Map<String, String> environment) {
        var line = new CommandLine(new Main());
        line.addSubcommand(new ServeCommand());
        line.addSubcommand(new RenderCommand());
        line.addSubcommand(new CheckCommand());
        line.addSubcommand(new ConvertCommand());
        line.addSubcommand(new AdminCommand());
        tellVersion(line);
        line.setCaseInsensitiveEnumValuesAllowed(true);
        line.setParameterExceptionHandler(Main::refused);
        // defaults first: a subcommand reads them from the line it hangs on
        line.setDefaultValueProvider(new EnvironmentDefaults(environment));
        return line;
    }

    /** Each command answers to {@code --version}, and all of them alike. */
    private static void tellVersion(CommandLine line) {
        line.getCommandSpec().versionProvider(new Version());
        line.getSubcommands().values().forEach(Main::tellVersion);
    }

    /** What is wrong and where the options are told; the whole list here would push the message off the screen. */
    private static int refused(ParameterException wrong, String[] args) {
        var line = wrong.getCommandLine();
        line.getErr().println(wrong.getMessage());
        UnmatchedArgumentException.printSuggestions(wrong, line.getErr());
        line.getErr().println("What can be given: " + line.getCommandSpec().qualifiedName() + " --help");
        return line.getCommandSpec().exitCodeOnInvalidInput();
    }
}
