package groundbass.intake.smf;

import groundbass.intake.draft.OneLine;
import groundbass.intake.notice.Unreadable;
import groundbass.text.Message;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The events of one track (MIDI 1.0; MMA RP-001). Mutable; one for a track. */
final class TrackReader {
    private static final int MOST_EVENTS = 1_000_000;
    private static final long LATEST = 1L << 32;

    private final ByteBuffer data;
    private final int offset;
    private long tick;
    private int status;

    private String name = "";
    private String rights = "";
    private final Map<Integer, Long> sounding = new HashMap<>();
    private final List<Smf.Note> notes = new ArrayList<>();
    private final List<Smf.Note> instants = new ArrayList<>();
    private final List<Smf.Program> programs = new ArrayList<>();
    private final List<Smf.Tempo> tempos = new ArrayList<>();
    private final List<Smf.Signature> signatures = new ArrayList<>();
    private final List<Smf.Key> keys = new ArrayList<>();
    private final List<Smf.Marker> markers = new ArrayList<>();

    /** @param offset of the data in its file, for saying where something is wrong */
    TrackReader(ByteBuffer data, int offset) {
        this.data = data;
        this.offset = offset;
    }

    Smf.Track read() throws Unreadable {
        int events = 0;
        boolean open = true;
        while (open && data.hasRemaining()) {
            if (++events > MOST_EVENTS) {
                throw new Unreadable(Message.of("intake.refused.size"));
            }
            tick += quantity();
            if (tick > LATEST) {
                throw broken();
            }
            open = event();
        }
        List.copyOf(sounding.keySet()).forEach(this::letGo);
        return new Smf.Track(name, rights, notes, instants, programs, tempos, signatures, keys, markers);
    }

    private Unreadable broken() {
        return SmfReader.broken(offset + data.position());
    }

    private int next() throws Unreadable {
        if (!data.hasRemaining()) {
            throw broken();
        }
        return data.get() & 0xFF;
    }

    /** At most four bytes of seven bits. */
    private int quantity() throws Unreadable {
        int value = 0;
        for (int i = 0; i < 4; i++) {
            int part = next();
            value = value << 7 | part & 0x7F;
            if (part < 0x80) {
                return value;
            }
        }
        throw broken();
    }

    /** @return false at the end of the track */
    private boolean event() throws Unreadable {
        int first = next();
        if (first == 0xFF) {
            status = 0;
            return meta(next());
        }
        if (first == 0xF0 || first == 0xF7) {
            status = 0;
            bytes();
            return true;
        }
        if (first >= 0xF0 || first < 0x80 && status == 0) {
            throw broken();
        }
        int one = first;
        if (first >= 0x80) {
            status = first;
            one = data7();
        }
        message(one);
        return true;
    }

    private int data7() throws Unreadable {
        int value = next();
        if (value > 0x7F) {
            throw broken();
        }
        return value;
    }

    private void message(int one) throws Unreadable {
        int channel = status & 0x0F;
        switch (status & 0xF0) {
            case 0x80 -> {
                data7();
                letGo(channel << 7 | one);
            }
            case 0x90 -> {
                if (data7() > 0) {
                    strike(channel << 7 | one);
                } else {
                    letGo(channel << 7 | one);
                }
            }
            case 0xA0, 0xB0, 0xE0 -> data7();
            case 0xC0 -> programs.add(new Smf.Program(channel, one));
            default -> {
                // pressure on a channel has one byte, and it is read
            }
        }
    }

    /** A key that is struck again is let go first; twice at one moment it is struck once. */
    private void strike(int channelAndKey) {
        Long on = sounding.get(channelAndKey);
        if (on == null || on < tick) {
            letGo(channelAndKey);
            sounding.put(channelAndKey, tick);
        }
    }

    private void letGo(int channelAndKey) {
        Long on = sounding.remove(channelAndKey);
        if (on != null) {
            var note = new Smf.Note(on, tick, channelAndKey >> 7, channelAndKey & 0x7F);
            (on < tick ? notes : instants).add(note);
        }
    }

    private byte[] bytes() throws Unreadable {
        int length = quantity();
        if (length > data.remaining()) {
            throw broken();
        }
        byte[] bytes = new byte[length];
        data.get(bytes);
        return bytes;
    }

    private boolean meta(int kind) throws Unreadable {
        byte[] bytes = bytes();
        switch (kind) {
            case 0x02 -> rights = rights.isEmpty() ? text(bytes) : rights;
            case 0x03 -> name = name.isEmpty() ? text(bytes) : name;
            case 0x06 -> markers.add(new Smf.Marker(tick, text(bytes)));
            case 0x51 -> tempo(bytes);
            case 0x58 -> signature(bytes);
            case 0x59 -> key(bytes);
            default -> {
                // words of singers, cues and what belongs to one program alone
            }
        }
        return kind != 0x2F;
    }

    private void tempo(byte[] bytes) {
        if (bytes.length >= 3) {
            int micros = (bytes[0] & 0xFF) << 16 | (bytes[1] & 0xFF) << 8 | bytes[2] & 0xFF;
            tempos.add(new Smf.Tempo(tick, micros));
        }
    }

    private void signature(byte[] bytes) {
        if (bytes.length >= 2) {
            int power = Math.min(bytes[1] & 0xFF, 8);
            signatures.add(new Smf.Signature(tick, bytes[0] & 0xFF, 1 << power));
        }
    }

    private void key(byte[] bytes) {
        if (bytes.length >= 2) {
            keys.add(new Smf.Key(tick, bytes[0], bytes[1] == 1));
        }
    }

    /** The format says ASCII; most programs write UTF-8, the others Latin-1 (common practice, no source). */
    private static String text(byte[] bytes) {
        String text;
        try {
            text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (CharacterCodingException e) {
            text = new String(bytes, StandardCharsets.ISO_8859_1);
        }
        return OneLine.of(text);
    }
}
