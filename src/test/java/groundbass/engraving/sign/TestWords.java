package groundbass.engraving.sign;

import groundbass.engraving.options.Paper;
import groundbass.engraving.options.QrCode;
import groundbass.engraving.options.SheetOptions;
import groundbass.engraving.options.SheetWords;
import groundbass.engraving.options.Sign;
import groundbass.score.Feel;
import java.util.Locale;
import java.util.Optional;

/** Plain words for sheets in tests. */
public final class TestWords implements SheetWords {
    @Override
    public String pageOf(int page, int pages) {
        return "Page " + page + " of " + pages;
    }

    @Override
    public String meaning(Sign sign) {
        return sign.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    @Override
    public String tuning(String strings) {
        return "Tuning, low to high: " + strings;
    }

    @Override
    public String feel(Feel feel) {
        return feel.toString();
    }

    @Override
    public String slowingTo(int perMinute) {
        return "slowing to " + perMinute;
    }

    @Override
    public String times(int times) {
        return times + " times";
    }

    @Override
    public String toCoda() {
        return "To Coda";
    }

    @Override
    public String ring() {
        return "let ring";
    }

    /** Both staves with every text in its place. */
    public static SheetOptions options(Paper paper) {
        return SheetOptions.of(
                paper,
                new TestWords(),
                new SheetOptions.Header("Lantern Street", "Quay Series, no. 3", "Quay Studio"),
                new SheetOptions.Footer(
                        "Free to copy",
                        "Release 1, 25 November 2026",
                        "Rest before it hurts; ask a professional where it does.",
                        Optional.of(QrCode.of("https://example.org/e/k3v9"))));
    }
}
