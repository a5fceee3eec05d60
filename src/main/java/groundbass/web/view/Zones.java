package groundbass.web.view;

import java.time.ZoneId;
import java.util.List;
import java.util.stream.Stream;

/** The time zones that a person may choose: by region and place, as the IANA time zone database names them. */
public final class Zones {
    private static final List<String> ALL = Stream.concat(
                    Stream.of("UTC"),
                    ZoneId.getAvailableZoneIds().stream()
                            .filter(name -> name.matches("(Africa|America|Antarctica|Arctic|Asia|Atlantic|Australia"
                                    + "|Europe|Indian|Pacific)/.+"))
                            .sorted())
            .toList();

    private Zones() {}

    /** The name under which a zone can be chosen here; Java calls universal time "Z" where nobody chose otherwise. */
    public static String named(ZoneId zone) {
        return zone.getId().equals("Z") ? "UTC" : zone.getId();
    }

    /** All of them; {@code chosen} too, where it is another, so that no form changes what was chosen. */
    public static List<String> with(String chosen) {
        return ALL.contains(chosen) || chosen.isBlank()
                ? ALL
                : Stream.concat(Stream.of(chosen), ALL.stream()).toList();
    }
}
