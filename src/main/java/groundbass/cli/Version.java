package groundbass.cli;

import java.util.Optional;
import picocli.CommandLine.IVersionProvider;

/** Which program this is: the version in the jar's manifest, and the Java that runs it. */
public final class Version implements IVersionProvider {
    private static final String NOT_PACKAGED = "(classes, not a jar)";

    @Override
    public String[] getVersion() {
        String version = Optional.ofNullable(Version.class.getPackage().getImplementationVersion())
                .orElse(NOT_PACKAGED);
        return new String[] {"groundbass " + version + ", Java " + Runtime.version()};
    }
}
