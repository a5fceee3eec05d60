package groundbass.site;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.demo.Demo;
import java.net.URI;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class SetUpNoticeTest {
    private static final URI ADDRESS = URI.create("http://localhost:8420");

    @Test
    void theFirstStartOfADemoTellsAddressAndPassword() {
        var steps = SetUpNotice.intoTheDemo(Optional.of(new Demo.Invitation("studio@demo.invalid", "once told")));
        assertThat(steps.text(ADDRESS).orElseThrow())
                .contains("http://localhost:8420/desk", "studio@demo.invalid", "once told");
    }

    @Test
    void whoStartsADemoAgainLearnsWhereThePasswordWasAndHowToGetANewOne() {
        assertThat(SetUpNotice.intoTheDemo(Optional.empty()).text(ADDRESS)).isEmpty();
        assertThat(SetUpNotice.demoAgain(ADDRESS)).contains("http://localhost:8420/desk", "first start", "--data");
    }
}
