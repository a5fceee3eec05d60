package groundbass.web.desk.site;

import groundbass.catalog.series.Styles;
import groundbass.document.HouseStyle;
import groundbass.document.SheetAbbreviations;
import groundbass.document.SheetAids;
import groundbass.document.SheetAids.CountsRow;
import groundbass.document.SheetLetters;
import groundbass.document.SheetPaper;
import groundbass.lesson.UsualLetters;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.FieldProblems;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** How a series has its sheets: its letters for the techniques of either hand, and what it abbreviates. */
public final class LetterPages implements PageGroup {
    private static final String PATH = "/desk/series/{id}/letters";
    private static final String TEMPLATE = "desk/letters";

    private final DeskContext desk;
    private final Styles styles;

    public LetterPages(DeskContext desk, Styles styles) {
        this.desk = desk;
        this.styles = styles;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, this::open);
        routes.post(PATH, Role.EDUCATOR, this::save);
    }

    private void open(Context ctx) {
        var series = desk.series(ctx);
        var style = styles.of(series.id());
        desk.pages().show(ctx, TEMPLATE, View.of(ctx.path(), series.title(), style));
    }

    private void save(Context ctx) {
        var series = desk.series(ctx);
        var typed = new LinkedHashMap<String, String>();
        SheetLetters.WORDS.forEach(word -> typed.put(word, FormParameters.text(ctx, word)));
        var abbreviations = new SheetAbbreviations(
                FormParameters.ticked(ctx, "simile"), FormParameters.ticked(ctx, "restsTogether"));
        var paper = SheetPaper.parse(FormParameters.text(ctx, "paper"));
        var aids = new SheetAids(
                CountsRow.parse(FormParameters.text(ctx, "counts")), FormParameters.ticked(ctx, "everyBar"));
        var letters = SheetLetters.typed(typed);
        letters.result()
                .map(read -> new HouseStyle(read, abbreviations, paper, aids))
                .ifPresent(style -> styles.save(desk.educator(ctx), series.id(), style));
        if (letters.problems().isEmpty()) {
            Flash.say(ctx, "desk.saved");
            ctx.redirect("/desk", HttpStatus.SEE_OTHER);
        } else {
            var problems = new FieldProblems(letters.problems());
            desk.pages()
                    .showAgain(
                            ctx,
                            TEMPLATE,
                            View.of(ctx.path(), series.title(), typed, abbreviations, paper, aids, problems));
        }
    }

    /** What the page shows. */
    public record View(
            String path,
            String series,
            List<Row> rows,
            SheetAbbreviations abbreviations,
            SheetPaper paper,
            SheetAids aids,
            FieldProblems problems) {
        /** What can be chosen for the row of counts. */
        public List<CountsRow> countsRows() {
            return List.of(CountsRow.values());
        }

        static View of(String path, String series, HouseStyle style) {
            return of(
                    path,
                    series,
                    style.letters().byWord(),
                    style.abbreviations(),
                    style.paper(),
                    style.aids(),
                    FieldProblems.NONE);
        }

        static View of(
                String path,
                String series,
                Map<String, String> typed,
                SheetAbbreviations abbreviations,
                SheetPaper paper,
                SheetAids aids,
                FieldProblems problems) {
            var rows = SheetLetters.WORDS.stream()
                    .map(word -> new Row(word, UsualLetters.of(word), typed.getOrDefault(word, "")))
                    .toList();
            return new View(path, series, rows, abbreviations, paper, aids, problems);
        }
    }

    /** One technique: line text's word for it, what is printed usually, and what the series has instead. */
    public record Row(String word, String usual, String letters) {}
}
