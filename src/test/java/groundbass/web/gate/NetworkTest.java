package groundbass.web.gate;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Addresses are those of RFC 3849 and RFC 5737; a network of one subscriber is a /64 or more (RFC 6177). */
class NetworkTest {
    @ParameterizedTest
    @ValueSource(strings = {"2001:db8:1:2::1", "[2001:db8:1:2:ffff:ffff:ffff:ffff]", "2001:db8:1:2:a:b:c:d%eth0"})
    void addressesOfOneSubscriberAreOneCaller(String address) {
        assertThat(Network.of(address)).isEqualTo(Network.of("2001:db8:1:2::"));
    }

    @Test
    void othersAreOthers() {
        assertThat(Network.of("2001:db8:1:3::1")).isNotEqualTo(Network.of("2001:db8:1:2::1"));
        assertThat(Network.of("192.0.2.1")).isNotEqualTo(Network.of("192.0.2.2"));
    }

    /** RFC 4291 section 2.5.5.2: an IPv4 address written as IPv6 is that IPv4 address. */
    @Test
    void anOlderAddressInANewerFormIsTheSame() {
        assertThat(Network.of("::ffff:192.0.2.1")).isEqualTo(Network.of("192.0.2.1"));
    }

    @Test
    void whatIsNoAddressIsTakenAsItIs() {
        assertThat(Network.of("not:an address")).isEqualTo("not:an address");
    }
}
