package groundbass.linetext;

import groundbass.remark.Remark;
import groundbass.remark.Report;
import groundbass.text.Messages;
import java.util.Locale;

/** The problems of a reading in English, as the command line tells them. */
final class Told {
    private Told() {}

    static String of(Reading reading) {
        return report(reading).of(reading.problems());
    }

    static String of(Reading reading, Remark problem) {
        return report(reading).of(problem);
    }

    private static Report report(Reading reading) {
        return new Report(reading.origins().source(), Messages.of(Locale.ENGLISH));
    }
}
