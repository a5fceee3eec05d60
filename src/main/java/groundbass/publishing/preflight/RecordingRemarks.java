package groundbass.publishing.preflight;

import groundbass.document.BackingTrack;
import groundbass.document.BarMap;
import groundbass.document.UploadId;
import groundbass.lesson.LessonText;
import groundbass.performance.Performance;
import groundbass.publishing.preflight.LessonRemark.Weight;
import groundbass.text.Message;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What is to be said of recordings that are not there, and of those whose bars were marked when the line had others. */
final class RecordingRemarks {
    private RecordingRemarks() {}

    static List<LessonRemark> of(LessonText text, Set<UploadId> missing) {
        var gone = text.document().backingTracks().stream()
                .filter(track -> missing.contains(track.upload()))
                .map(track -> Message.of("publishing.problem.recording", track.title()))
                .map(message -> LessonRemark.blocks(Checkpoint.RECORDINGS, "tracks", message));
        return Stream.concat(gone, marked(text).stream()).toList();
    }

    private static List<LessonRemark> marked(LessonText text) {
        var marked = text.document().backingTracks().stream()
                .filter(track -> !track.map().bars().isEmpty())
                .toList();
        if (marked.isEmpty()
                || text.main().hasErrors()
                || text.document().mainLine().isBlank()) {
            return List.of(); // which bars there are is clear once the line can be read
        }
        var played = Performance.of(text.main().line()).bars().stream()
                .map(bar -> new Bar(bar.number(), bar.pass()))
                .collect(Collectors.toSet());
        return marked.stream()
                .filter(track -> !bars(track.map()).equals(played))
                .map(RecordingRemarks::differs)
                .toList();
    }

    private record Bar(int number, int pass) {}

    private static Set<Bar> bars(BarMap map) {
        return map.bars().stream()
                .map(start -> new Bar(start.bar(), start.pass()))
                .collect(Collectors.toSet());
    }

    /** Each once, in their order: {@code 1.1 2.1 2.2}. */
    private static String text(BarMap map) {
        return bars(map).stream()
                .sorted(Comparator.comparing(Bar::number).thenComparing(Bar::pass))
                .map(bar -> bar.number() + "." + bar.pass())
                .collect(Collectors.joining(" "));
    }

    private static LessonRemark differs(BackingTrack track) {
        return new LessonRemark(
                Checkpoint.RECORDINGS,
                Weight.ASKS,
                "tracks",
                Message.of("publishing.remark.recording", track.title()),
                track.upload().value() + "\n" + text(track.map()));
    }
}
