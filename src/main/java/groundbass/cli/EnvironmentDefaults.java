package groundbass.cli;

import java.util.Locale;
import java.util.Map;
import picocli.CommandLine.IDefaultValueProvider;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;

/** Reads {@code --smtp-host} from {@code GROUNDBASS_SMTP_HOST} where the flag is not given; so for every flag. */
public final class EnvironmentDefaults implements IDefaultValueProvider {
    private static final String PREFIX = "GROUNDBASS_";

    private final Map<String, String> environment;

    public EnvironmentDefaults(Map<String, String> environment) {
        this.environment = Map.copyOf(environment);
    }

    static String variable(String flag) {
        return PREFIX + flag.replaceFirst("^-+", "").replace('-', '_').toUpperCase(Locale.ROOT);
    }

    @Override
    public String defaultValue(ArgSpec argument) {
        return argument instanceof OptionSpec option ? environment.get(variable(option.longestName())) : null;
    }
}
