package groundbass.web.shell;

import java.util.Optional;
import java.util.regex.Pattern;

/** Where to go on after signing in: only ever a path of this site. */
public final class Next {
    // one slash and no backslash: "//elsewhere" and "/\elsewhere" name another host to a browser
    private static final Pattern OWN_PATH = Pattern.compile("/(?![/\\\\])[^\\\\\\p{Cntrl}]*");

    private Next() {}

    public static String orElse(Optional<String> wish, String otherwise) {
        return wish.filter(w -> OWN_PATH.matcher(w).matches()).orElse(otherwise);
    }
}
