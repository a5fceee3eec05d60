package groundbass.intake.draft;

import java.util.Locale;
import java.util.regex.Pattern;

/** Whether a part is called a bass, in the languages that programs name parts in (common practice, no source). */
public final class BassNames {
    private static final Pattern BASS = Pattern.compile("bass|bas[oe]\\b|basso\\b|bajo\\b|baixo\\b");
    private static final Pattern OTHERS = Pattern.compile(
            "bassoon|basset|clarinet|drum|trombone|sax|voice|vocal|choir|flute|recorder|tuba|oboe|klarinette|posaune|stimme|trommel|flöte");

    private BassNames() {}

    /** @param names of the part and of its instruments */
    public static boolean isBass(String names) {
        String lower = names.toLowerCase(Locale.ROOT);
        return BASS.matcher(lower).find() && !OTHERS.matcher(lower).find();
    }
}
