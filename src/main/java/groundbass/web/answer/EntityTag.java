package groundbass.web.answer;

import groundbass.identity.Sha256;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** A strong entity tag (RFC 9110 section 8.8.3); {@code opaque} is what stands between the quotes. */
public record EntityTag(String opaque) {
    private static final int DIGITS = 32;
    private static final Pattern FORM = Pattern.compile("[\\x21\\x23-\\x7e]+");

    public EntityTag {
        Objects.requireNonNull(opaque);
        if (!FORM.matcher(opaque).matches()) {
            throw new IllegalArgumentException("not an entity tag: " + opaque);
        }
    }

    public static EntityTag ofContent(byte[] content) {
        return new EntityTag(Sha256.of(content).hex().substring(0, DIGITS));
    }

    public static EntityTag ofContent(String content) {
        return ofContent(content.getBytes(StandardCharsets.UTF_8));
    }

    /** Whether an {@code If-None-Match} header names this tag; compared weakly (RFC 9110 sections 8.8.3.2 and 13.1.2). */
    public boolean namedIn(Optional<String> ifNoneMatch) {
        return ifNoneMatch.stream().flatMap(list -> list.lines()).anyMatch(this::namedIn);
    }

    /** Whether an {@code If-Match} header names this tag; compared strongly (RFC 9110 sections 8.8.3.2 and 13.1.1). */
    public boolean matches(String ifMatch) {
        return ifMatch.strip().equals("*")
                || Stream.of(ifMatch.split(",")).anyMatch(tag -> tag.strip().equals(toString()));
    }

    private boolean namedIn(String list) {
        if (list.strip().equals("*")) {
            return true;
        }
        for (String one : list.split(",")) {
            String tag = one.strip();
            if ((tag.startsWith("W/") ? tag.substring(2) : tag).equals(toString())) {
                return true;
            }
        }
        return false;
    }

    /** Whether an {@code If-Range} header allows a part: absent, or this very tag (compared strongly, section 13.1.5). */
    public boolean allowsRange(Optional<String> ifRange) {
        return ifRange.map(tag -> tag.strip().equals(toString())).orElse(true);
    }

    @Override
    public String toString() {
        return '"' + opaque + '"';
    }
}
