package groundbass.web.student.lesson;

import groundbass.lesson.PageContent.LineContent;
import groundbass.lesson.PageContent.Picture;
import groundbass.lesson.PageContent.StepContent;
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
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Makes what a page shows of the lines of one release. */
final class LineViews {
    /** A picture for screens from this width on is the widest that there is. */
    private static final int WIDE = 800;

    private final ReleaseId release;
    private final ReleaseContents contents;
    private final List<ReleaseFile> files;
    private final Ways ways;
    private final Messages said;
    private final Reader reader;

    /** @param said the words that the walkthrough was told in */
    LineViews(
            ReleaseId release,
            ReleaseContents contents,
            List<ReleaseFile> files,
            Ways ways,
            Messages said,
            Reader reader) {
        this.release = release;
        this.said = said;
        this.contents = contents;
        this.files = files;
        this.ways = ways;
        this.reader = reader;
    }

    LineView of(String id, LineContent line) {
        var steps = line.steps();
        var told = steps.isEmpty() ? steps : steps.subList(1, steps.size());
        String facts = reader.say(
                Message.of("student.facts", KeyWords.of(line.key(), reader), line.meter(), line.tempo(), line.bars()));
        String opening = steps.isEmpty() ? "" : steps.get(0).text();
        return new LineView(
                id,
                line.title(),
                facts,
                pictures(line.pictures()),
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

    private List<BarView> bars(String id, List<StepContent> told) {
        Map<Integer, List<StepView>> bars = new LinkedHashMap<>();
        told.forEach(step ->
                bars.computeIfAbsent(step.bar(), bar -> new ArrayList<>()).add(step(step)));
        return bars.entrySet().stream()
                .map(bar -> new BarView(id + "-bar-" + bar.getKey(), name(bar.getKey()), bar.getValue()))
                .toList();
    }

    private StepView step(StepContent step) {
        boolean whole = step.from().equals(step.bar() + ":0") && step.to().equals(step.bar() + 1 + ":0");
        return new StepView(
                step.bar(), step.from(), step.to(), whole, UnderHeading.text(said, step.bar(), step.text()));
    }

    private String name(int bar) {
        return reader.say(bar == 0 ? Message.of("student.pickup") : Message.of("student.bar", bar));
    }
}
