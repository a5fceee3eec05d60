package groundbass.writing;

import groundbass.score.Fraction;
import java.util.List;
import java.util.Optional;

/**
 * A stretch of one voice in which nothing begins or ends.
 *
 * @param parts what sounds, lowest first; empty for silence
 * @param hidden whether the silence only fills a second voice
 */
record VoiceSpan(Fraction from, Fraction to, List<BarShare> parts, boolean hidden) {
    boolean isSilent() {
        return parts.isEmpty();
    }

    VoiceSpan between(Fraction newFrom, Fraction newTo) {
        return new VoiceSpan(newFrom, newTo, parts, hidden);
    }

    /**
     * This silence and the next as one where they are alike, or meet at no good place: then it is read if either is;
     * empty where they stay two.
     */
    Optional<VoiceSpan> joined(VoiceSpan next, Pulse pulse) {
        boolean one = isSilent() && next.isSilent() && (hidden == next.hidden || !pulse.mayEndRest(to));
        return one ? Optional.of(new VoiceSpan(from, next.to, parts, hidden && next.hidden)) : Optional.empty();
    }
}
