package groundbass.catalog;

import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The time zones that a person may choose: universal time, and those that the IANA time zone database names by region and
 * place. Offsets such as "+02:00" know no summer time and are no zones here.
 */
public final class ZoneNames {
    private static final Set<String> KNOWN = ZoneId.getAvailableZoneIds();
    private static final List<String> ALL = Stream.concat(
                    Stream.of("UTC"),
                    KNOWN.stream()
                            .filter(name -> name.matches("(Africa|America|Antarctica|Arctic|Asia|Atlantic|Australia"
                                    + "|Europe|Indian|Pacific)/.+"))
                            .sorted())
            .toList();

    private ZoneNames() {}

    /** All that are offered, by name. */
    public static List<String> all() {
        return ALL;
    }

    /** The name under which a zone is offered; Java calls universal time "Z" where nobody chose otherwise. */
    public static String of(ZoneId zone) {
        return zone.getId().equals("Z") ? "UTC" : zone.getId();
    }

    /** A zone by its name ("Europe/Vienna"), or by its place alone ("vienna", "New York") where only one has it. */
    public static Optional<ZoneId> read(String text) {
        String name = text.strip();
        return KNOWN.contains(name) || name.equals("Z") ? Optional.of(ZoneId.of(name)) : byPlace(name);
    }

    private static Optional<ZoneId> byPlace(String typed) {
        String place = typed.toLowerCase(Locale.ROOT).replace(' ', '_');
        var meant = ALL.stream().filter(name -> isAt(name, place)).toList();
        return meant.size() == 1 ? Optional.of(ZoneId.of(meant.get(0))) : Optional.empty();
    }

    private static boolean isAt(String name, String place) {
        String lower = name.toLowerCase(Locale.ROOT);
        return lower.equals(place) || lower.endsWith("/" + place);
    }
}
