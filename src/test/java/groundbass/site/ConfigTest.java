package groundbass.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import groundbass.Main;
import groundbass.cli.ServeCommand;
import groundbass.store.Database;
import groundbass.web.answer.SendfileOffload;
import groundbass.web.answer.SignedAddress;
import java.net.URI;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine.ParameterException;

class ConfigTest {
    @Test
    void startsOnThisMachineAloneWithoutAnyFlag() {
        var config = read(Map.of());
        assertThat(config.host()).isEqualTo("127.0.0.1");
        assertThat(config.port()).isEqualTo(8420);
        assertThat(config.data()).isEqualTo(Path.of("data"));
        assertThat(config.database()).isEmpty();
        assertThat(config.mail()).isEmpty();
        assertThat(config.publicAddress(8420)).isEqualTo(URI.create("http://localhost:8420"));
    }

    @Test
    void readsEveryFlagFromAVariableToo() {
        var config = read(Map.of(
                "GROUNDBASS_PORT", "80",
                "GROUNDBASS_DEMO", "true",
                "GROUNDBASS_PUBLIC_ADDRESS", "https://grooves.example/",
                "GROUNDBASS_DATABASE_URL", "jdbc:postgresql://db/groundbass"));
        assertThat(config.port()).isEqualTo(80);
        assertThat(config.demo()).isTrue();
        assertThat(config.publicAddress(80)).isEqualTo(URI.create("https://grooves.example"));
        assertThat(config.database().orElseThrow().url()).isEqualTo("jdbc:postgresql://db/groundbass");
    }

    @Test
    void lessonsAreKeptOnDevicesUnlessThatIsSwitchedOff() {
        assertThat(read(Map.of()).keeping()).isTrue();
        assertThat(read(Map.of(), "--keep-nothing").keeping()).isFalse();
        assertThat(read(Map.of("GROUNDBASS_KEEP_NOTHING", "true")).keeping()).isFalse();
    }

    @Test
    void whatNoMailServerTakesIsRefusedByItsFlag() {
        var mail = Map.of("GROUNDBASS_SMTP_HOST", "mail.example");
        assertThatThrownBy(() -> read(mail, "--smtp-from", "Harbour Rounds <news@grooves.example>"))
                .isInstanceOf(ParameterException.class)
                .hasMessageContaining("--smtp-from");
        assertThatThrownBy(() -> read(mail, "--smtp-from", "news@grooves.example", "--smtp-port", "0"))
                .isInstanceOf(ParameterException.class)
                .hasMessageContaining("--smtp-port");
        assertThat(read(mail, "--smtp-from", "news@grooves.example").mail()).isPresent();
    }

    /** RFC 3986 section 3.2.2: an address of IPv6 stands in brackets. */
    @Test
    void anAddressOfTheNewerKindIsNamedInBrackets() {
        assertThat(read(Map.of(), "--host", "::1").publicAddress(80)).isEqualTo(URI.create("http://[::1]:80"));
        assertThat(read(Map.of(), "--host", "::1").isExposed()).isFalse();
        assertThat(read(Map.of(), "--host", "::").publicAddress(80)).isEqualTo(URI.create("http://localhost:80"));
    }

    @Test
    void countsItsFrontServers() {
        assertThat(read(Map.of()).hops()).isZero();
        assertThat(read(Map.of(), "--behind-proxy").hops()).isOne();
        assertThat(read(Map.of(), "--behind-proxy", "--demo").demo()).isTrue();
        assertThat(read(Map.of(), "--behind-proxy", "2").hops()).isEqualTo(2);
        assertThat(read(Map.of("GROUNDBASS_BEHIND_PROXY", "3")).hops()).isEqualTo(3);
        assertThatThrownBy(() -> read(Map.of(), "--behind-proxy", "-1")).isInstanceOf(ParameterException.class);
    }

    @Test
    void knowsWhenItIsOpenToAWholeNetwork() {
        assertThat(read(Map.of()).isExposed()).isFalse();
        assertThat(read(Map.of(), "--host", "0.0.0.0").isExposed()).isTrue();
        assertThat(read(Map.of(), "--host", "192.0.2.4").isExposed()).isTrue();
        assertThat(read(Map.of(), "--host", "0.0.0.0", "--behind-proxy").isExposed())
                .isFalse();
    }

    /** Where the lessons are there already, or may be, nothing is drawn to warm up. */
    @Test
    void aDemonstrationBeginsWhereNoDatabaseIsYet(@TempDir Path data) {
        var config = Config.local(data, 0);
        assertThat(config.beginsDemo()).isFalse();
        assertThat(config.withDemo().beginsDemo()).isTrue();
        var server = new Config.DatabaseServer("jdbc:postgresql://db/groundbass", "", new Secret(""));
        assertThat(config.withDemo().with(Optional.of(server)).beginsDemo()).isFalse();
        Database.embedded(data).close();
        assertThat(config.withDemo().beginsDemo()).isFalse();
    }

    @Test
    void aFlagWinsOverItsVariable() {
        assertThat(read(Map.of("GROUNDBASS_PORT", "80"), "--port", "81").port()).isEqualTo(81);
    }

    @Test
    void neverShowsASecret() {
        var config = read(Map.of(
                "GROUNDBASS_DATABASE_URL", "jdbc:postgresql://db/groundbass",
                "GROUNDBASS_DATABASE_PASSWORD", "hush-1",
                "GROUNDBASS_SMTP_HOST", "mail.example",
                "GROUNDBASS_SMTP_FROM", "lessons@grooves.example",
                "GROUNDBASS_SMTP_PASSWORD", "hush-2"));
        assertThat(config.toString()).doesNotContain("hush");
        assertThat(config.mail().orElseThrow().password().orElseThrow().value()).isEqualTo("hush-2");
    }

    @Test
    void filesAreHandedOverToTheFrontServerOrToTheObjectStore() {
        assertThat(read(Map.of("GROUNDBASS_HAND_OVER", "/stored/")).handOver())
                .contains(new SendfileOffload("/stored/", SendfileOffload.USUAL_HEADER));
        assertThat(read(Map.of(
                                "GROUNDBASS_HAND_OVER", "/var/lib/my.site/",
                                "GROUNDBASS_HAND_OVER_HEADER", "X-File-Of-Ours"))
                        .handOver())
                .contains(new SendfileOffload("/var/lib/my.site/", "X-File-Of-Ours"));
        assertThat(read(Map.of(
                                "GROUNDBASS_FILES", "s3://grooves/site",
                                "GROUNDBASS_HAND_OVER", "https://objects.grooves.example/"))
                        .handOver())
                .contains(new SignedAddress(URI.create("https://objects.grooves.example")));
    }

    @Test
    void aWrongValueIsNamedWithWhatIsExpected() {
        assertThatThrownBy(() -> read(Map.of("GROUNDBASS_HAND_OVER", "stored")))
                .isInstanceOf(ParameterException.class)
                .hasMessage("--hand-over (or GROUNDBASS_HAND_OVER) is \"stored\"; expected a path such as /stored/.");
        assertThatThrownBy(() -> read(Map.of(), "--files", "s3://grooves", "--hand-over", "/stored/"))
                .hasMessageContaining("the host at which readers reach the object store");
        assertThatThrownBy(() -> read(Map.of(), "--hand-over", "/stored/", "--hand-over-header", "X: y"))
                .hasMessageContaining("--hand-over-header");
        assertThatThrownBy(() -> read(Map.of(), "--public-address", "grooves.example"))
                .hasMessageContaining("expected http:// or https://");
        assertThatThrownBy(() -> read(Map.of(), "--smtp-host", "mail.example")).hasMessageContaining("--smtp-from");
    }

    @Test
    void helpListsEveryFlagAndTheVariables() {
        var line = Main.commandLine(Map.of()).getSubcommands().get("serve");
        assertThat(line.getUsageMessage())
                .contains("--data", "--port", "--host", "--demo", "--public-address", "--smtp-host", "GROUNDBASS_");
    }

    private static Config read(Map<String, String> environment, String... flags) {
        var line = Main.commandLine(environment);
        line.parseArgs(Stream.concat(Stream.of("serve"), Stream.of(flags)).toArray(String[]::new));
        return line.getSubcommands().get("serve").<ServeCommand>getCommand().config();
    }
}
