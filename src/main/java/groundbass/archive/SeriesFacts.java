package groundbass.archive;

import groundbass.archive.file.DamagedFile;
import groundbass.archive.file.Facts;
import groundbass.catalog.series.Outlook;
import groundbass.catalog.series.ReleaseRhythm;
import groundbass.catalog.series.RhythmForm;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesForm;
import groundbass.document.HouseStyle;
import groundbass.document.SheetAbbreviations;
import groundbass.document.SheetAids;
import groundbass.document.SheetAids.CountsRow;
import groundbass.document.SheetLetters;
import groundbass.document.SheetPaper;
import groundbass.publishing.NewsText;
import java.util.HashMap;
import java.util.Optional;

/** What a series says of itself and how it is kept, as {@code series.properties} says it. */
record SeriesFacts(SeriesForm form, HouseStyle style, RhythmForm rhythm, Outlook outlook, NewsText news) {
    private static final String YES = "yes";
    private static final String NO = "no";

    static SeriesFacts of(
            Series series, HouseStyle style, Optional<ReleaseRhythm> rhythm, Outlook outlook, NewsText news) {
        return new SeriesFacts(SeriesForm.of(series), style, RhythmForm.of(rhythm), outlook, news);
    }

    Facts facts() {
        var facts = new Facts()
                .put("title", form.title())
                .put("slug", form.slug())
                .put("summary", form.summary())
                .put("zone", form.zone())
                .put("letters", style.letters().toString())
                .put("same.bars.as.signs", yes(style.abbreviations().simile()))
                .put("rests.together", yes(style.abbreviations().restsTogether()))
                .put("paper", style.paper().toString())
                .put("counts", style.aids().counts().code())
                .put("every.bar.numbered", yes(style.aids().everyBar()))
                .put("coming.lessons", outlook.word());
        if (!rhythm.first().isBlank()) {
            facts.put("rhythm.first", rhythm.first())
                    .put("rhythm.time", rhythm.time())
                    .put("rhythm.weeks", rhythm.weeks())
                    .put("rhythm.breaks", rhythm.breaks());
        }
        return facts.putUnless("", "news.subject", news.subject()).putUnless("", "news.opening", news.opening());
    }

    /** What is not said is as usual; whether the rest may be so is asked where it is saved. */
    static SeriesFacts read(Facts facts) throws DamagedFile {
        var form = new SeriesForm(facts.get("title"), facts.word("slug"), facts.get("summary"), facts.word("zone"));
        var style = new HouseStyle(
                letters(facts.get("letters")),
                new SheetAbbreviations(isYes(facts, "same.bars.as.signs"), isYes(facts, "rests.together")),
                SheetPaper.parse(facts.word("paper")),
                new SheetAids(CountsRow.parse(facts.word("counts")), isYes(facts, "every.bar.numbered")));
        var rhythm = new RhythmForm(
                facts.word("rhythm.first"),
                facts.word("rhythm.time"),
                facts.word("rhythm.weeks"),
                facts.get("rhythm.breaks"));
        var news = new NewsText(facts.get("news.subject"), facts.get("news.opening"));
        return new SeriesFacts(form, style, rhythm, Outlook.parse(facts.word("coming.lessons")), news);
    }

    private static SheetLetters letters(String text) throws DamagedFile {
        var typed = new HashMap<String, String>();
        for (String pair : text.strip().split(" +")) {
            int between = pair.indexOf('=');
            if (between > 0) {
                typed.put(pair.substring(0, between), pair.substring(between + 1));
            }
        }
        return SheetLetters.typed(typed).result().orElseThrow(() -> DamagedFile.of("archive.problem.letters"));
    }

    private static String yes(boolean is) {
        return is ? YES : NO;
    }

    private static boolean isYes(Facts facts, String name) {
        return facts.word(name).equals(YES);
    }
}
