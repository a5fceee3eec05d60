package groundbass.web.student.lesson;

import groundbass.lesson.PageContent.LineContent;
import groundbass.lesson.PageContent.Picture;
import groundbass.lesson.PageContent.StepContent;
import groundbass.lesson.PageContent.ToldContent;
import groundbass.release.ReleaseFile;
import groundbass.release.ReleaseId;
import groundbass.text.Message;
import groundbass.text.Messages;
import groundbass.walkthrough.words.UnderHeading;
import groundbass.web.student.lesson.EpisodeView.BarView;
import groundbass.web.student.lesson.EpisodeView.LineView;
import groundbass.web.student.lesson.EpisodeView.PictureView;
import groundbass.web.student.lesson.EpisodeView.StepView;
import groundbass.web.view.Reader;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Makes what a page shows of the lines of one release. */
final class LineViews {
    /** A picture for screens from this width on is the widest that there is. */
    private static final int WIDE = 800;

    private final ReleaseId release;
    private final ReleaseContents contents;
    private final List<ReleaseFile> files;
    private final Ways ways;
    private final String language;
    private final Reader reader;

    /** @param language of the lesson */
    LineViews(
            ReleaseId release,
            ReleaseContents contents,
            List<ReleaseFile> files,
            Ways ways,
            String language,
            Reader reader) {
        this.release = release;
        this.language = language;
        this.contents = contents;
        this.files = files;
        this.ways = ways;
        this.reader = reader;
    }

    LineView of(String id, LineContent line) {
        var steps = steps(line);
        var told = steps.isEmpty() ? steps : steps.subList(1, steps.size());
        String facts = reader.say(
                Message.of("student.facts", KeyWords.of(line.key(), reader), line.meter(), line.tempo(), line.bars()));
        String opening = steps.isEmpty() ? "" : steps.get(0).text();
        String openingLanguage = steps.isEmpty() ? language : steps.get(0).language();
        return new LineView(
                id,
                line.title(),
                facts,
                pictures(line.pictures()),
                openingLanguage,
                opening,
                bars(id, told),
                practice(id),
                ways.fitted(release, id));
    }

    private Optional<String> practice(String id) {
        return files.stream()
                .filter(file -> file.name().equals(id + "-play.json"))
                .map(file -> ways.play(release, file.name()))
                .findFirst();
    }

    private List<PictureView> pictures(List<Picture> pictures) {
        return pictures.stream().flatMap(this::picture).toList();
    }

    private Stream<PictureView> picture(Picture picture) {
        String kind = picture.fromWidth() == 0 ? "narrow" : picture.fromWidth() < WIDE ? "medium" : "wide";
        return files.stream()
                .filter(file -> file.name().equals(picture.file()))
                .flatMap(file -> contents.text(file).stream())
                .map(text -> new PictureView(kind, text));
    }

    private List<BarView> bars(String id, List<StepView> told) {
        Map<Integer, List<StepView>> bars = new LinkedHashMap<>();
        told.forEach(step ->
                bars.computeIfAbsent(step.bar(), bar -> new ArrayList<>()).add(underHeading(step)));
        return bars.entrySet().stream()
                .map(bar -> new BarView(id + "-bar-" + bar.getKey(), name(bar.getKey()), bar.getValue()))
                .toList();
    }

    /** In the reader's language where the release has it, else in the lesson's. */
    private List<StepView> steps(LineContent line) {
        var own = line.steps();
        var other = line.others().stream()
                .filter(told -> told.language().equals(reader.language()))
                .filter(told -> told.steps().size() == own.size())
                .findFirst();
        return IntStream.range(0, own.size())
                .mapToObj(
                        i -> other.map(told -> other(own.get(i), told, i)).orElseGet(() -> step(own.get(i), language)))
                .toList();
    }

    /** A step that says the same in both has the educator's words. */
    private StepView other(StepContent own, ToldContent told, int i) {
        var step = told.steps().get(i);
        return step(step, step.text().equals(own.text()) ? language : told.language());
    }

    private static StepView step(StepContent step, String language) {
        boolean whole = step.from().equals(step.bar() + ":0") && step.to().equals(step.bar() + 1 + ":0");
        return new StepView(step.bar(), step.from(), step.to(), whole, language, step.text());
    }

    /** The heading has named the bar. */
    private static StepView underHeading(StepView step) {
        var said = Messages.of(Locale.forLanguageTag(step.language()));
        String text = UnderHeading.text(said, step.bar(), step.text());
        return new StepView(step.bar(), step.from(), step.to(), step.whole(), step.language(), text);
    }

    private String name(int bar) {
        return reader.say(bar == 0 ? Message.of("student.pickup") : Message.of("student.bar", bar));
    }
}
