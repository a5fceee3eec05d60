package groundbass.intake.smf;

import groundbass.intake.notice.Unreadable;
import groundbass.text.Message;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads the chunks of a Standard MIDI File of format 0 or 1 (MMA RP-001). Chunks that it does not know are passed over, and
 * a file may end early after a whole track; anything else that breaks the form is told with its place.
 */
final class SmfReader {
    private static final int HEADER = 0x4D546864;
    private static final int TRACK = 0x4D54726B;
    private static final int MOST_TRACKS = 1_000;

    private final ByteBuffer file;

    private SmfReader(byte[] file) {
        this.file = ByteBuffer.wrap(file);
    }

    static boolean isSmf(byte[] file) {
        return file.length >= 4 && ByteBuffer.wrap(file).getInt() == HEADER;
    }

    static Smf read(byte[] file) throws Unreadable {
        return new SmfReader(file).read();
    }

    static Unreadable broken(int at) {
        return new Unreadable(Message.of("intake.refused.midi", at));
    }

    private Smf read() throws Unreadable {
        if (file.remaining() < 14) {
            throw broken(file.limit());
        }
        file.getInt();
        int length = file.getInt();
        if (length < 6 || length > file.remaining()) {
            throw broken(4);
        }
        int format = file.getShort() & 0xFFFF;
        file.getShort();
        int division = file.getShort();
        file.position(8 + length);
        if (format > 1) {
            throw new Unreadable(Message.of("intake.refused.midi.format", format));
        }
        if (division <= 0) {
            throw new Unreadable(Message.of("intake.refused.midi.frames"));
        }
        return new Smf(format, division, tracks());
    }

    private List<Smf.Track> tracks() throws Unreadable {
        var tracks = new ArrayList<Smf.Track>();
        while (file.remaining() >= 8 && tracks.size() < MOST_TRACKS) {
            int kind = file.getInt();
            int length = file.getInt();
            if (length < 0 || length > file.remaining()) {
                throw broken(file.position() - 4);
            }
            if (kind == TRACK) {
                tracks.add(new TrackReader(file.slice(file.position(), length), file.position()).read());
            }
            file.position(file.position() + length);
        }
        return tracks;
    }
}
