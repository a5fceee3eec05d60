package groundbass.lesson;

import groundbass.engraving.mark.Page;
import groundbass.engraving.png.SheetPng;
import java.util.Comparator;
import java.util.function.DoubleFunction;
import java.util.stream.DoubleStream;

/** Music broken so that it stands in a frame as large as it can; {@code scale} is how many pixels a staff space has. */
record LargestPage(Page page, double scale) {
    /** Widths that are tried, in staff spaces: from a short bar to a long line in one row, each so much wider. */
    private static final double NARROWEST = 20;

    private static final double WIDEST = 1_000;
    private static final double WIDER = 1.06;

    /**
     * @param drawn draws the music so many staff spaces wide
     * @param width, height of the frame in pixels
     * @param largest scale that looks well
     */
    static LargestPage of(DoubleFunction<Page> drawn, double width, double height, double largest) {
        return DoubleStream.iterate(NARROWEST, spaces -> spaces <= WIDEST, spaces -> spaces * WIDER)
                .mapToObj(spaces -> fit(drawn.apply(spaces), width, height, largest))
                .max(Comparator.comparingDouble(LargestPage::scale))
                .orElseThrow();
    }

    private static LargestPage fit(Page page, double width, double height, double largest) {
        var box = SheetPng.content(page);
        double scale = Math.min(width / box.width(), height / box.height());
        return new LargestPage(page, Math.min(scale, largest));
    }
}
