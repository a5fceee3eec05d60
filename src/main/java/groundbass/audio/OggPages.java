package groundbass.audio;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/** Packets of one stream as pages (RFC 3533 section 6). A packet never lies on two of them. */
final class OggPages {
    private static final int HEAD = 27;
    private static final int CHECKSUM_AT = 22;
    private static final int MOST_SEGMENTS = 255;
    private static final int LONGEST_SEGMENT = 255;
    private static final int BEGINS = 2;
    private static final int ENDS = 4;
    private static final int SERIAL = 1;
    private static final int POLYNOMIAL = 0x04c1_1db7;
    private static final int[] CHECKSUMS = checksums();

    private final ByteArrayOutputStream out;
    private final ByteArrayOutputStream segments = new ByteArrayOutputStream();
    private final ByteArrayOutputStream body = new ByteArrayOutputStream();
    private long reached;
    private int number;

    OggPages(ByteArrayOutputStream out) {
        this.out = out;
    }

    /** A packet on a page of its own, before all sound. */
    void alone(byte[] packet) {
        add(packet, 0);
        write(0);
    }

    /** @param reached how many samples the stream has with this packet */
    void add(byte[] packet, long reached) {
        int needed = packet.length / LONGEST_SEGMENT + 1;
        if (segments.size() + needed > MOST_SEGMENTS) {
            write(0);
        }
        for (int left = packet.length; left >= 0; left -= LONGEST_SEGMENT) {
            segments.write(Math.min(left, LONGEST_SEGMENT));
        }
        body.writeBytes(packet);
        this.reached = reached;
    }

    void end() {
        write(ENDS);
    }

    private void write(int flags) {
        byte[] page = ByteBuffer.allocate(HEAD + segments.size() + body.size())
                .order(ByteOrder.LITTLE_ENDIAN)
                .put("OggS".getBytes(StandardCharsets.US_ASCII))
                .put((byte) 0)
                .put((byte) (number == 0 ? flags | BEGINS : flags))
                .putLong(reached)
                .putInt(SERIAL)
                .putInt(number)
                .putInt(0)
                .put((byte) segments.size())
                .put(segments.toByteArray())
                .put(body.toByteArray())
                .array();
        ByteBuffer.wrap(page).order(ByteOrder.LITTLE_ENDIAN).putInt(CHECKSUM_AT, checksum(page));
        out.writeBytes(page);
        segments.reset();
        body.reset();
        number++;
    }

    private static int checksum(byte[] page) {
        int sum = 0;
        for (byte one : page) {
            sum = sum << 8 ^ CHECKSUMS[sum >>> 24 ^ one & 0xff];
        }
        return sum;
    }

    private static int[] checksums() {
        var all = new int[256];
        for (int i = 0; i < all.length; i++) {
            int sum = i << 24;
            for (int bit = 0; bit < 8; bit++) {
                sum = sum << 1 ^ (sum < 0 ? POLYNOMIAL : 0);
            }
            all[i] = sum;
        }
        return all;
    }
}
