package groundbass.intake.draft;

import groundbass.score.Header;
import groundbass.text.Cut;

/** Texts of a file as a line may have them. */
public final class OneLine {
    private OneLine() {}

    /** On one line, without control characters and double quotes, as long as a line allows. */
    public static String of(String text) {
        var line = new StringBuilder();
        for (int i = 0; i < text.length() && line.length() <= Header.LONGEST_TEXT; i++) {
            char c = text.charAt(i);
            boolean space = Character.isWhitespace(c) || Character.isISOControl(c) || Character.isSpaceChar(c);
            if (!space) {
                line.append(c == '"' ? '\'' : c);
            } else if (!line.isEmpty() && line.charAt(line.length() - 1) != ' ') {
                line.append(' ');
            }
        }
        return Cut.to(line.toString(), Header.LONGEST_TEXT).strip();
    }
}
