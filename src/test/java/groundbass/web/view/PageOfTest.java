package groundbass.web.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class PageOfTest {
    private static PageOf page(int number) {
        return new PageOf("/list", number, 100);
    }

    @Test
    void aListThatFitsOnOnePageTurnsNowhere() {
        assertThat(page(1).turning(100).isAll()).isTrue();
        assertThat(page(1).turning(0).isAll()).isTrue();
        assertThat(page(1).turning(101).isAll()).isFalse();
    }

    @Test
    void pagesLeadToOneAnotherAndTheFirstHasTheBareAddress() {
        assertThat(page(1).turning(250)).isEqualTo(new PageOf.Turning("", "/list?page=2", 1));
        assertThat(page(2).turning(250)).isEqualTo(new PageOf.Turning("/list", "/list?page=3", 2));
        assertThat(page(3).turning(250)).isEqualTo(new PageOf.Turning("/list?page=2", "", 3));
        assertThat(page(3).skipped()).isEqualTo(200);
    }

    @Test
    void whatIsNoPageIsRefused() {
        assertThat(PageOf.canBe(0)).isFalse();
        assertThat(PageOf.canBe(1)).isTrue();
        assertThat(PageOf.canBe(Integer.MAX_VALUE)).isFalse();
        assertThatThrownBy(() -> page(0)).isInstanceOf(IllegalArgumentException.class);
    }
}
