package groundbass.audience.download;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Which bytes of a file have been sent: spans in order that neither touch nor are empty. Written as
 * {@code 0-100,200-300}. Holds at most {@value #MOST} spans and then forgets the shortest: a client that asks for
 * hundreds of scattered crumbs is not counted complete before it asks again, and never wrongly.
 */
record Coverage(List<ByteSpan> spans) {
    /** Fifty spans of two 19-digit offsets fit into the 2,000 characters of their column. */
    static final int MOST = 50;

    static final Coverage NOTHING = new Coverage(List.of());

    Coverage {
        spans = List.copyOf(spans);
    }

    static Coverage parse(String text) {
        if (text.isEmpty()) return NOTHING;
        return new Coverage(Stream.of(text.split(",")).map(Coverage::span).toList());
    }

    Coverage plus(ByteSpan sent) {
        if (sent.length() == 0) return this;
        var apart = new ArrayList<ByteSpan>();
        ByteSpan joined = sent;
        for (ByteSpan span : spans) {
            if (span.touches(joined)) joined = span.joinedWith(joined);
            else apart.add(span);
        }
        apart.add(joined);
        if (apart.size() > MOST) apart.remove(shortest(apart));
        apart.sort(Comparator.comparingLong(ByteSpan::from));
        return new Coverage(apart);
    }

    /** Whether every byte of a file of this size is among them. */
    boolean isAllOf(long size) {
        return size == 0
                || spans.size() == 1 && spans.get(0).from() == 0 && spans.get(0).until() >= size;
    }

    private static ByteSpan shortest(List<ByteSpan> spans) {
        return spans.stream().min(Comparator.comparingLong(ByteSpan::length)).orElseThrow();
    }

    private static ByteSpan span(String text) {
        int dash = text.indexOf('-');
        return new ByteSpan(Long.parseLong(text.substring(0, dash)), Long.parseLong(text.substring(dash + 1)));
    }

    @Override
    public String toString() {
        return spans.stream().map(ByteSpan::toString).collect(Collectors.joining(","));
    }
}
