package groundbass.writing;

import groundbass.score.Bar;
import groundbass.score.Fraction;
import groundbass.writing.Cluster.Division;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/**
 * Divides what sounds in a bar into voices: two only where a note is held while others move, the upper and the lower
 * by pitch (rule: two-voice-stems). Where even two are too few, a voice cuts its notes wherever another begins or
 * ends, and ties them.
 */
final class Voicing {
    private final Pulse pulse;
    private final Bar bar;
    private final List<Cluster> clusters;
    private final List<Division> divisions;

    private Voicing(Pulse pulse, Bar bar, List<Part> sounding) {
        this.pulse = pulse;
        this.bar = bar;
        this.clusters = Cluster.of(sounding);
        this.divisions = divisions(clusters);
    }

    /** One voice or two, the upper first, each filling the bar. */
    static List<List<Span>> of(Pulse pulse, Bar bar, List<Part> sounding) {
        var voicing = new Voicing(pulse, bar, sounding);
        var upper = voicing.divisions.stream().map(Division::upper).toList();
        var lower = voicing.divisions.stream().map(Division::lower).toList();
        if (lower.stream().allMatch(List::isEmpty)) {
            return List.of(voicing.spans(upper, true));
        }
        return List.of(voicing.spans(upper, true), voicing.spans(lower, false));
    }

    /** A chord that needs no second voice goes to the one whose pitches in this bar are nearer. */
    private static List<Division> divisions(List<Cluster> clusters) {
        var divided = clusters.stream()
                .filter(cluster -> !cluster.isOneChord())
                .map(Cluster::divided)
                .toList();
        double upper = Cluster.meanPitch(
                divided.stream().flatMap(each -> each.upper().stream()).toList());
        double lower = Cluster.meanPitch(
                divided.stream().flatMap(each -> each.lower().stream()).toList());
        var all = new ArrayList<Division>();
        var rest = divided.iterator();
        for (var cluster : clusters) {
            double pitch = Cluster.meanPitch(cluster.parts());
            boolean isLower = !divided.isEmpty() && Math.abs(pitch - lower) < Math.abs(pitch - upper);
            if (!cluster.isOneChord()) {
                all.add(rest.next());
            } else if (isLower) {
                all.add(new Division(List.of(), cluster.parts()));
            } else {
                all.add(new Division(cluster.parts(), List.of()));
            }
        }
        return all;
    }

    private List<Span> spans(List<List<Part>> voice, boolean showsSilence) {
        var spans = new ArrayList<Span>();
        var at = bar.from();
        for (int i = 0; i < clusters.size(); i++) {
            silence(spans, at, clusters.get(i).from(), !showsSilence);
            inside(spans, clusters.get(i), voice.get(i));
            at = clusters.get(i).to();
        }
        silence(spans, at, bar.to(), !showsSilence);
        return spans;
    }

    /** What a voice does while a cluster sounds; once it has no more to say there, its silence only fills. */
    private void inside(List<Span> spans, Cluster cluster, List<Part> parts) {
        var edges = new TreeSet<Fraction>(List.of(cluster.from(), cluster.to()));
        parts.forEach(part -> edges.addAll(List.of(part.from(), part.to())));
        var lastEnd = parts.stream().map(Part::to).reduce(cluster.from(), Fraction::max);
        var from = cluster.from();
        for (var to : edges.tailSet(cluster.from(), false)) {
            var now = sounding(parts, from);
            if (now.isEmpty()) {
                silence(spans, from, to, !from.isBefore(lastEnd));
            } else {
                spans.add(new Span(from, to, now, false));
            }
            from = to;
        }
    }

    private static List<Part> sounding(List<Part> parts, Fraction at) {
        return parts.stream()
                .filter(part -> !part.from().isAfter(at) && part.to().isAfter(at))
                .sorted(Comparator.comparing((Part part) -> part.pitch().diatonicIndex())
                        .thenComparing(part -> part.pitch().midi())
                        .thenComparing(part -> -part.note().string()))
                .toList();
    }

    private void silence(List<Span> spans, Fraction from, Fraction to, boolean hidden) {
        if (!from.isBefore(to)) {
            return;
        }
        var silence = new Span(from, to, List.of(), hidden);
        int last = spans.size() - 1;
        var joined = last < 0 ? Optional.<Span>empty() : spans.get(last).joined(silence, pulse);
        joined.ifPresentOrElse(span -> spans.set(last, span), () -> spans.add(silence));
    }
}
