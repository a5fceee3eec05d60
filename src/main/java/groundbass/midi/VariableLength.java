package groundbass.midi;

import java.io.ByteArrayOutputStream;

/** Variable-length quantities of Standard MIDI Files 1.0: seven bits a byte, high bit set on all but the last. */
final class VariableLength {
    static final long MOST = 0x0FFFFFFF;

    private VariableLength() {}

    static void write(ByteArrayOutputStream out, long value) {
        if (value < 0 || value > MOST) {
            throw new IllegalArgumentException("no variable-length quantity: " + value);
        }
        for (int shift = 21; shift > 0; shift -= 7) {
            if (value >> shift != 0) {
                out.write((int) (value >> shift & 0x7F) | 0x80);
            }
        }
        out.write((int) (value & 0x7F));
    }
}
