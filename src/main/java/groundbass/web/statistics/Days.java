package groundbass.web.statistics;

import groundbass.web.view.Reader;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;

/** Days and hours of a series' own zone in the reader's language. */
public record Days(Reader reader) {
    static Days of(Reader reader, ZoneId zone) {
        return new Days(reader.in(zone));
    }

    public String day(LocalDate date) {
        return DateTimeFormatter.ofLocalizedDate(FormatStyle.MEDIUM)
                .withLocale(reader.writing())
                .format(date);
    }

    public String moment(Instant instant) {
        return reader.moment(instant);
    }
}
