package groundbass.engraving;

import java.util.ArrayList;
import java.util.List;

/** Which systems go on which page: as many as fit, and no system alone on the last one. */
final class PageBreaks {
    private PageBreaks() {}

    /**
     * @param first what the first page has for systems, and the {@code others} each
     * @param tail what must fit under the last system as well
     */
    static List<List<Page.Part>> fill(List<Page.Part> systems, double gap, double first, double others, double tail) {
        var pages = new ArrayList<List<Page.Part>>();
        pages.add(new ArrayList<>());
        double used = 0;
        for (int i = 0; i < systems.size(); i++) {
            double height = systems.get(i).group().box().height();
            double room = (pages.size() == 1 ? first : others) - (i + 1 == systems.size() ? tail : 0);
            boolean empty = pages.get(pages.size() - 1).isEmpty();
            if (!empty && used + gap + height > room) {
                pages.add(new ArrayList<>());
                used = 0;
                empty = true;
            }
            used += (empty ? 0 : gap) + height;
            pages.get(pages.size() - 1).add(systems.get(i));
        }
        befriend(pages);
        return pages;
    }

    /** Takes a system from the page before for one that would stand alone. */
    private static void befriend(List<List<Page.Part>> pages) {
        int last = pages.size() - 1;
        if (last > 0 && pages.get(last).size() == 1 && pages.get(last - 1).size() > 2) {
            var before = pages.get(last - 1);
            pages.get(last).add(0, before.remove(before.size() - 1));
        }
    }
}
