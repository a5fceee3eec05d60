package groundbass.release.zip;

import groundbass.identity.Sha256;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;

/**
 * A zip whose entries are stored as they are, so that what lies between them is known before anything is read (APPNOTE
 * 6.3: local heads in 4.3.7, the central directory in 4.3.12, its end in 4.3.16). Less than 4 GB and 65,536 entries.
 */
public final class StoredZip {
    private static final short VERSION = 20;
    private static final short NAMES_IN_UTF_8 = 0x0800;
    private static final short STORED = 0;
    private static final int LOCAL_HEAD = 0x04034b50;
    private static final int CENTRAL_HEAD = 0x02014b50;
    private static final int END = 0x06054b50;
    private static final int FIRST_YEAR = 1980;

    private final int moment;
    private final List<ZipPiece> pieces = new ArrayList<>();
    private final ByteArrayOutputStream directory = new ByteArrayOutputStream();
    private int entries;
    private long size;

    /** @param moment of all entries: local, of no zone */
    public StoredZip(LocalDateTime moment) {
        int date = moment.getYear() - FIRST_YEAR << 9 | moment.getMonthValue() << 5 | moment.getDayOfMonth();
        int time = moment.getHour() << 11 | moment.getMinute() << 5 | moment.getSecond() / 2;
        this.moment = date << 16 | time;
    }

    /** @param length of the file, which is stored as it is */
    public void add(String name, Sha256 sha256, long length, long crc) {
        byte[] path = name.getBytes(StandardCharsets.UTF_8);
        var entry = bytes(26)
                .putShort(VERSION)
                .putShort(NAMES_IN_UTF_8)
                .putShort(STORED)
                .putInt(moment)
                .putInt((int) crc)
                .putInt((int) length)
                .putInt((int) length)
                .putShort((short) path.length)
                .putShort((short) 0);
        var central =
                bytes(46 + path.length).putInt(CENTRAL_HEAD).putShort(VERSION).put(entry.array());
        central.putShort((short) 0)
                .putShort((short) 0)
                .putShort((short) 0)
                .putInt(0)
                .putInt((int) size);
        directory.writeBytes(central.put(path).array());
        add(new ZipPiece.Head(bytes(30 + path.length)
                .putInt(LOCAL_HEAD)
                .put(entry.array())
                .put(path)
                .array()));
        add(new ZipPiece.Content(sha256, length));
        entries++;
    }

    private void add(ZipPiece piece) {
        pieces.add(piece);
        size += piece.size();
    }

    /** All of it, in order. */
    public List<ZipPiece> pieces() {
        var all = new ArrayList<>(pieces);
        all.add(new ZipPiece.Head(directory.toByteArray()));
        all.add(new ZipPiece.Head(bytes(22)
                .putInt(END)
                .putInt(0)
                .putShort((short) entries)
                .putShort((short) entries)
                .putInt(directory.size())
                .putInt((int) size)
                .putShort((short) 0)
                .array()));
        return all;
    }

    private static ByteBuffer bytes(int count) {
        return ByteBuffer.allocate(count).order(ByteOrder.LITTLE_ENDIAN);
    }
}
