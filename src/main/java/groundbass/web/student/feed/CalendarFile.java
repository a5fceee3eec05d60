package groundbass.web.student.feed;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;

/** Writes hours of lessons as an iCalendar file (RFC 5545). Hours are in UTC, so that it needs no table of time zones. */
final class CalendarFile {
    static final String MEDIA_TYPE = "text/calendar; charset=utf-8";

    private static final int LONGEST_LINE = 75; // octets, RFC 5545 section 3.1
    private static final DateTimeFormatter UTC =
            DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'").withZone(ZoneOffset.UTC);

    private final StringBuilder out = new StringBuilder();

    private CalendarFile() {}

    /**
     * An hour at which a lesson comes out or came out.
     *
     * @param id names it for good
     * @param changed when the hour was fixed as it is now
     * @param link empty before it is out
     */
    record Event(String id, Instant at, Instant changed, String title, Optional<String> link) {}

    static String of(String title, List<Event> events) {
        var file = new CalendarFile();
        file.line("BEGIN", "VCALENDAR");
        file.line("VERSION", "2.0");
        file.line("PRODID", "-//Groundbass//Lessons//EN");
        file.line("CALSCALE", "GREGORIAN");
        file.line("NAME", text(title)); // RFC 7986 section 5.1
        file.line("REFRESH-INTERVAL;VALUE=DURATION", "PT6H"); // RFC 7986 section 5.7
        events.forEach(file::event);
        file.line("END", "VCALENDAR");
        return file.out.toString();
    }

    private void event(Event event) {
        line("BEGIN", "VEVENT");
        line("UID", event.id());
        line("DTSTAMP", UTC.format(event.changed()));
        line("DTSTART", UTC.format(event.at()));
        line("SUMMARY", text(event.title()));
        event.link().ifPresent(link -> line("URL", link));
        line("TRANSP", "TRANSPARENT"); // it takes none of the reader's time
        line("END", "VEVENT");
    }

    /** RFC 5545 section 3.3.11. */
    private static String text(String value) {
        return value.replace("\\", "\\\\")
                .replace(";", "\\;")
                .replace(",", "\\,")
                .replaceAll("\\R", "\\\\n")
                .replaceAll("\\p{Cntrl}", "");
    }

    /** Folded so that no line has more octets than it may, and no character is cut in two (RFC 5545 section 3.1). */
    private void line(String name, String value) {
        int octets = 0;
        for (int c : (name + ":" + value).codePoints().toArray()) {
            int size = Character.toString(c).getBytes(StandardCharsets.UTF_8).length;
            if (octets + size > LONGEST_LINE) {
                out.append("\r\n ");
                octets = 1;
            }
            out.appendCodePoint(c);
            octets += size;
        }
        out.append("\r\n");
    }
}
