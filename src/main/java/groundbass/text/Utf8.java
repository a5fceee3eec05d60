package groundbass.text;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** Text in UTF-8 (RFC 3629). */
public final class Utf8 {
    private Utf8() {}

    /** What the bytes say, all of them; empty where they are no UTF-8. */
    public static Optional<String> read(byte[] bytes) {
        try {
            var text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes));
            return Optional.of(text.toString());
        } catch (CharacterCodingException e) {
            return Optional.empty();
        }
    }
}
