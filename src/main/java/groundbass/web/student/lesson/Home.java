package groundbass.web.student.lesson;

import groundbass.text.Message;
import groundbass.web.general.HomePage.Shelf;
import groundbass.web.general.HomePage.View;
import groundbass.web.view.Reader;
import java.util.function.Function;

/** What the front page shows of the lessons. */
public final class Home implements Function<Reader, View> {
    private static final int NEWEST = 3;

    private final Lessons lessons;
    private final Cards cards;
    private final boolean demo;

    /** @param demo whether lessons in the making belong to a demonstration, and so may be spoken of */
    public Home(Lessons lessons, Cards cards, boolean demo) {
        this.lessons = lessons;
        this.cards = cards;
        this.demo = demo;
    }

    @Override
    public View apply(Reader reader) {
        var shelves =
                lessons.all().stream().map(series -> shelf(series, reader)).toList();
        boolean making = (demo || shelves.isEmpty()) && lessons.inTheMaking();
        return new View(reader.say(Message.of("home.lead")), shelves, making);
    }

    private Shelf shelf(PublishedSeries published, Reader reader) {
        var series = published.series();
        var newest = published.newest(NEWEST).stream()
                .map(part -> cards.of(series, part, reader))
                .toList();
        return new Shelf(
                series.title(),
                Paths.of(series),
                cards.language(published),
                series.summary(),
                published.parts().size(),
                newest);
    }
}
