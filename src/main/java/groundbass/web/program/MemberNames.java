package groundbass.web.program;

import java.lang.reflect.RecordComponent;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What the interface calls the fields of documents and forms that the services speak of. */
final class MemberNames {
    private static final Map<String, String> CALLED_OTHERWISE = Map.of(
            "mainLine", "line",
            "groove", "drums.grid",
            "facts.gear", "gear",
            "facts.video", "video",
            "facts.courses", "courses",
            "settings.language", "language",
            "settings.tempos", "tempos",
            "settings.rounds", "rounds",
            "local", "hour");

    /** Members of a draft, and those of other objects that the services call by the same name. */
    private static final Set<String> CALLED_SO = Stream.concat(
                    Stream.of(DraftView.class.getRecordComponents()).map(RecordComponent::getName),
                    Stream.of("hour", "zone", "note", "why"))
            .collect(Collectors.toUnmodifiableSet());

    private MemberNames() {}

    /** The member that a field is called here; empty where the interface has none such. */
    static Optional<String> of(String field) {
        if (field.matches("exercises\\[[0-9]+]")) {
            return Optional.of(field + ".line");
        }
        String member = CALLED_OTHERWISE.getOrDefault(field, field);
        return CALLED_SO.contains(member.replaceFirst("[.\\[].*", "")) ? Optional.of(member) : Optional.empty();
    }
}
