package groundbass.linetext.problem;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** What else players call what a word of line text says (common practice, no source). Words one slip away are not here. */
final class OtherNames {
    private static final Map<String, String> WORDS = Map.ofEntries(
            Map.entry("staccato", "short"),
            Map.entry("stacc", "short"),
            Map.entry("stacc.", "short"),
            Map.entry("crescendo", "cresc"),
            Map.entry("decrescendo", "dim"),
            Map.entry("decresc", "dim"),
            Map.entry("diminuendo", "dim"),
            Map.entry("let", "ring"),
            Map.entry("l.r.", "ring"),
            Map.entry("p.m.", "mute"),
            Map.entry("pm", "mute"),
            Map.entry("palm", "mute"),
            Map.entry("h", "hammer"),
            Map.entry("ho", "hammer"),
            Map.entry("hammer-on", "hammer"),
            Map.entry("po", "pull"),
            Map.entry("pull-off", "pull"),
            Map.entry("gliss", "slide"),
            Map.entry("gliss.", "slide"),
            Map.entry("glissando", "slide"),
            Map.entry("plectrum", "pick"),
            Map.entry("index", "i"),
            Map.entry("middle", "m"),
            Map.entry("vib", "vibrato"),
            Map.entry("vib.", "vibrato"),
            Map.entry("nh", "harmonic"),
            Map.entry("flageolet", "harmonic"),
            Map.entry("ah", "harmonic at"),
            Map.entry("arpeggio", "roll"),
            Map.entry("arp", "roll"),
            Map.entry("arp.", "roll"),
            Map.entry("arpeggiato", "roll"),
            Map.entry("rolled", "roll"),
            Map.entry("strum", "roll"));

    private OtherNames() {}

    static Optional<String> of(String typed) {
        return Optional.ofNullable(WORDS.get(typed.toLowerCase(Locale.ROOT)));
    }
}
