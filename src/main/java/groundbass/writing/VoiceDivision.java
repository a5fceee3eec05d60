package groundbass.writing;

import groundbass.score.Bar;
import groundbass.score.Fraction;
import groundbass.writing.Cluster.Division;
import groundbass.writing.WrittenBar.Divided;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/**
 * Divides what sounds in a bar into voices: two only in the beats in which a note is held while others move, the upper
 * and the lower by pitch (rule: two-voices-where-held). There both are complete, with their rests; elsewhere one voice has
 * everything, and the lower one's silence only fills. Where even two are
 * too few, a voice cuts its notes wherever another begins or ends, and ties them.
 */
final class VoiceDivision {
    private final Pulse pulse;
    private final Bar bar;
    private final List<Cluster> clusters;
    private final List<Divided> divided;
    private final List<Division> divisions;

    private VoiceDivision(Pulse pulse, Bar bar, List<BarShare> sounding) {
        this.pulse = pulse;
        this.bar = bar;
        this.clusters = Cluster.of(sounding);
        this.divided = beats();
        this.divisions = divisions();
    }

    /**
     * What each voice does, the upper first, each filling the bar.
     *
     * @param spans of one voice or two
     */
    record Voices(List<List<VoiceSpan>> spans, List<Divided> divided) {}

    static Voices of(Pulse pulse, Bar bar, List<BarShare> sounding) {
        var voicing = new VoiceDivision(pulse, bar, sounding);
        var upper = voicing.divisions.stream().map(Division::upper).toList();
        if (voicing.divided.isEmpty()) {
            return new Voices(List.of(voicing.spans(upper, true)), List.of());
        }
        var lower = voicing.divisions.stream().map(Division::lower).toList();
        return new Voices(List.of(voicing.spans(upper, true), voicing.spans(lower, false)), voicing.divided);
    }

    /** Whole beats around what needs two voices, in order; those that touch are one. */
    private List<Divided> beats() {
        var beats = new ArrayList<Divided>();
        for (var cluster : clusters) {
            if (cluster.isOneChord()) {
                continue;
            }
            var from = pulse.beatStart(cluster.from()).max(bar.from());
            var to = (pulse.isBeat(cluster.to()) ? cluster.to() : pulse.beatEnd(cluster.to())).min(bar.to());
            int last = beats.size() - 1;
            boolean touches = last >= 0 && !beats.get(last).to().isBefore(from);
            if (touches) {
                beats.set(last, new Divided(beats.get(last).from(), to));
            } else {
                beats.add(new Divided(from, to));
            }
        }
        return beats;
    }

    private boolean isDivided(Fraction at) {
        return divided.stream().anyMatch(beats -> beats.contains(at));
    }

    /** In those beats, a chord that needs no second voice goes to the one whose pitches in this bar are nearer. */
    private List<Division> divisions() {
        var apart = clusters.stream()
                .filter(cluster -> !cluster.isOneChord())
                .map(Cluster::divided)
                .toList();
        double upper = Cluster.meanPitch(
                apart.stream().flatMap(each -> each.upper().stream()).toList());
        double lower = Cluster.meanPitch(
                apart.stream().flatMap(each -> each.lower().stream()).toList());
        var all = new ArrayList<Division>();
        var rest = apart.iterator();
        for (var cluster : clusters) {
            double pitch = Cluster.meanPitch(cluster.parts());
            boolean isLower = isDivided(cluster.from()) && Math.abs(pitch - lower) < Math.abs(pitch - upper);
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

    private List<VoiceSpan> spans(List<List<BarShare>> voice, boolean upper) {
        var spans = new ArrayList<VoiceSpan>();
        var at = bar.from();
        for (int i = 0; i < clusters.size(); i++) {
            silence(spans, at, clusters.get(i).from(), upper);
            inside(spans, clusters.get(i), voice.get(i), upper);
            at = clusters.get(i).to();
        }
        silence(spans, at, bar.to(), upper);
        return spans;
    }

    /** What a voice does while a cluster sounds. */
    private void inside(List<VoiceSpan> spans, Cluster cluster, List<BarShare> parts, boolean upper) {
        var edges = new TreeSet<Fraction>(List.of(cluster.from(), cluster.to()));
        parts.forEach(part -> edges.addAll(List.of(part.from(), part.to())));
        var from = cluster.from();
        for (var to : edges.tailSet(cluster.from(), false)) {
            var now = sounding(parts, from);
            if (now.isEmpty()) {
                silence(spans, from, to, upper);
            } else {
                spans.add(new VoiceSpan(from, to, now, false));
            }
            from = to;
        }
    }

    private static List<BarShare> sounding(List<BarShare> parts, Fraction at) {
        return parts.stream()
                .filter(part -> !part.from().isAfter(at) && part.to().isAfter(at))
                .sorted(Comparator.comparing((BarShare part) -> part.pitch().diatonicIndex())
                        .thenComparing(part -> part.pitch().midi())
                        .thenComparing(part -> -part.note().string()))
                .toList();
    }

    /** The lower voice's silence is read only in the beats that have two voices. */
    private void silence(List<VoiceSpan> spans, Fraction from, Fraction to, boolean upper) {
        var edges = new TreeSet<Fraction>(List.of(from, to));
        divided.forEach(beats -> edges.addAll(List.of(beats.from(), beats.to())));
        var at = from;
        for (var edge : edges.subSet(from, false, to, true)) {
            add(spans, new VoiceSpan(at, edge, List.of(), !upper && !isDivided(at)));
            at = edge;
        }
    }

    private void add(List<VoiceSpan> spans, VoiceSpan silence) {
        int last = spans.size() - 1;
        var joined = last < 0 ? Optional.<VoiceSpan>empty() : spans.get(last).joined(silence, pulse);
        joined.ifPresentOrElse(span -> spans.set(last, span), () -> spans.add(silence));
    }
}
