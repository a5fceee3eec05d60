package groundbass.web.student;

import groundbass.document.DocumentSettings;
import groundbass.document.EpisodeDocument;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.document.Rights;
import groundbass.walkthrough.words.Naming;
import groundbass.web.Site;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** A site with one lesson to play along to: four bars at 120, and an exercise of triplets, at 60, 80 and 100 %. */
final class Rehearsal {
    /** Two quarters of bar 1 are counted 1 and 2; at 120 a bar lasts two seconds. */
    private static final String LINE = """
            title   Four Ropes
            key     A minor
            meter   4/4
            tempo   120
            strings E A D G
            style   finger

            bar 1 over Am7
            1    A0, A0
            2    A3
            3    D2 slap, D2 pop
            4    rest, E3

            bar 2 over D9
            1    A5*2, Ax, A5
            2    D5
            3    A5, A3
            4    D2

            bar 3 = bar 1

            bar 4 over E7
            1    E0
            2    E0, E2
            3    E4*2, A2
            4    D2 pop
            """;

    private static final String EXERCISE = """
            title   Exercise: triplets
            key     A minor
            meter   4/4
            tempo   90
            strings E A D G

            bar 1 over Am7
            1    A0, A3, D2
            2    D2, A3, A0
            3    A0
            4    rest
            """;

    private Rehearsal() {}

    static Shelf on(Site site) {
        return Shelf.with(site, lesson(LINE));
    }

    /** The same lesson, which says something else and sounds as before. */
    static EpisodeDocument saying(String summary) {
        return lesson(LINE).edit().summary(summary).done();
    }

    /** By hand: opens the site with the line of a file, says where, and stays until a key is pressed. */
    public static void main(String[] args) throws IOException {
        try (var site = Site.open()) {
            Shelf.with(site, lesson(Files.readString(Path.of(args[0]))));
            System.out.println(site.address() + "/series/" + Shelf.SERIES + "/1");
            System.in.read();
        }
    }

    private static EpisodeDocument lesson(String line) {
        return EpisodeDocument.titled("Four Ropes", Level.BEGINNER)
                .edit()
                .mainLine(new LineSource("", line))
                .exercises(List.of(new LineSource("", EXERCISE)))
                .rights(new Rights("Quay Studio", "", "Own work of the trial studio."))
                .settings(new DocumentSettings("en", "60 80 100", "1", Naming.USUAL.word()))
                .done();
    }
}
