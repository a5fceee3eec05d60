package groundbass.publishing.address;

import java.net.Inet4Address;
import java.net.InetAddress;
import java.util.List;

/**
 * Tells addresses that everybody on the internet can reach from those of this machine, of its network and of special
 * purposes (IANA special-purpose address registries, RFC 6890; RFC 1918, RFC 6598, RFC 4193, RFC 4291).
 */
final class PublicNetwork {
    private static final List<Block> NOT_PUBLIC = List.of(
            Block.of(8, 0),
            Block.of(8, 10),
            Block.of(10, 100, 64),
            Block.of(8, 127),
            Block.of(16, 169, 254),
            Block.of(12, 172, 16),
            Block.of(24, 192, 0, 0),
            Block.of(24, 192, 0, 2),
            Block.of(24, 192, 88, 99),
            Block.of(16, 192, 168),
            Block.of(15, 198, 18),
            Block.of(24, 198, 51, 100),
            Block.of(24, 203, 0, 113),
            Block.of(3, 224)); // multicast, reserved and broadcast

    /** Of the one block of IPv6 that is given out, what is not for everybody, or carries an address of IPv4. */
    private static final List<Block> NOT_PUBLIC_IN_SIX =
            List.of(Block.of(23, 0x20, 0x01), Block.of(32, 0x20, 0x01, 0x0d, 0xb8), Block.of(16, 0x20, 0x02));

    private static final Block GIVEN_OUT_IN_SIX = Block.of(3, 0x20);

    private PublicNetwork() {}

    static boolean has(InetAddress address) {
        byte[] bytes = address.getAddress();
        if (address instanceof Inet4Address) {
            return NOT_PUBLIC.stream().noneMatch(block -> block.has(bytes));
        }
        return GIVEN_OUT_IN_SIX.has(bytes) && NOT_PUBLIC_IN_SIX.stream().noneMatch(block -> block.has(bytes));
    }

    /** Addresses that begin with the same bits. */
    private record Block(int bits, List<Integer> first) {
        static Block of(int bits, Integer... first) {
            return new Block(bits, List.of(first));
        }

        boolean has(byte[] address) {
            for (int bit = 0; bit < bits; bit++) {
                int own = bit / 8 < first.size() ? first.get(bit / 8) : 0;
                int mask = 0x80 >> bit % 8;
                if ((own & mask) != (address[bit / 8] & mask)) {
                    return false;
                }
            }
            return true;
        }
    }
}
