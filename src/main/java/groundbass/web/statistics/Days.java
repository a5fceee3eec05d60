package groundbass.web.statistics;

import groundbass.web.view.Reader;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.time.format.TextStyle;
import java.util.List;
import java.util.stream.Stream;

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

    /** A day of the week and an hour of it, in the reader's words; Monday is 1. */
    public String hour(int weekday, int hour) {
        var locale = reader.writing();
        return DayOfWeek.of(weekday).getDisplayName(TextStyle.FULL, locale) + " "
                + DateTimeFormatter.ofLocalizedTime(FormatStyle.SHORT)
                        .withLocale(locale)
                        .format(LocalTime.of(hour, 0));
    }

    /** The seven days, from Monday on. */
    public List<String> weekdays() {
        return Stream.of(DayOfWeek.values())
                .map(day -> day.getDisplayName(TextStyle.SHORT, reader.writing()))
                .toList();
    }

    public String moment(Instant instant) {
        return reader.moment(instant);
    }
}
