package groundbass.fuzz;

import java.util.Map;
import java.util.TreeMap;
import java.util.function.Supplier;

/** All that is fuzzed, by name. */
final class Targets {
    static final Map<String, Supplier<Target>> ALL = new TreeMap<>(Map.of(
            "line", LineTarget::new,
            "edit", EditTarget::new,
            "groove", GrooveTarget::new,
            "script", ScriptTarget::new,
            "captions", CaptionsTarget::new,
            "audio", AudioTarget::new,
            "markdown", MarkdownTarget::new,
            "intake", IntakeTarget::new,
            "site", SiteTarget::new));

    private Targets() {}
}
