package groundbass.intake.xml;

import groundbass.intake.notice.NoticeList;
import groundbass.intake.xml.document.XmlElement;
import groundbass.intake.xml.document.XmlNumbers;
import groundbass.score.Passes;
import groundbass.score.Repeats.Ending;
import groundbass.score.Repeats.RepeatEnd;
import groundbass.text.Message;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.regex.Pattern;

/** Repeats and brackets at the edges of measures. Mutable: remembers the bracket that is open. */
final class Barline {
    /** One pass; two that a hyphen joins are from one to the other. */
    private static final Pattern PASSES = Pattern.compile("(\\d{1,8})(?:\\s*-\\s*(\\d{1,8}))?");

    private final NoticeList notices;
    private Optional<RawMeasure> open = Optional.empty();
    private int lastPass;

    Barline(NoticeList notices) {
        this.notices = notices;
    }

    void read(XmlElement barline, RawMeasure bar, List<RawMeasure> before) {
        barline.child("ending").filter(ending -> ending.is("type", "start")).ifPresent(ending -> {
            close(before);
            begin(ending, bar);
        });
        barline.child("repeat").ifPresent(repeat -> repeat(repeat, bar));
        barline.child("ending").filter(ending -> !ending.is("type", "start")).ifPresent(ending -> {
            bar.endingEnd |= open.isPresent();
            open = Optional.empty();
        });
    }

    /** A bracket that another follows, or nothing, ends before it. */
    void close(List<RawMeasure> before) {
        open.ifPresent(begun -> (before.isEmpty() ? begun : before.get(before.size() - 1)).endingEnd = true);
        open = Optional.empty();
    }

    /** The passes of a bracket follow one another in a line; those that do not are told. */
    private void begin(XmlElement ending, RawMeasure bar) {
        String number = ending.attribute("number").orElse("");
        var passes = passes(number);
        if (passes.isEmpty()) {
            passes.add(number.isBlank() ? lastPass + 1 : 0);
        }
        int first = passes.first();
        int last = first;
        while (passes.contains(last + 1)) {
            last++;
        }
        boolean fits = Ending.isPasses(first, last);
        if (!fits || last < passes.last()) {
            notices.leftOut(bar.index, Message.of("intake.left.ending", number));
        }
        if (fits) {
            bar.ending = Optional.of(new Ending(first, last));
            lastPass = last;
            open = Optional.of(bar);
        }
    }

    private static TreeSet<Integer> passes(String number) {
        var passes = new TreeSet<Integer>();
        PASSES.matcher(number).results().forEach(found -> {
            int first = Integer.parseInt(found.group(1));
            int last = found.group(2) == null ? first : Integer.parseInt(found.group(2));
            passes.add(first);
            for (int pass = first; pass <= Math.min(last, first + Passes.MOST_PASSES); pass++) {
                passes.add(pass);
            }
        });
        return passes;
    }

    private void repeat(XmlElement repeat, RawMeasure bar) {
        if (repeat.is("direction", "forward")) {
            bar.repeatStart = true;
            lastPass = 0;
        } else {
            bar.repeatEnd = Optional.of(open.isEmpty() && !bar.endingEnd ? end(repeat, bar) : RepeatEnd.PLAIN);
            bar.endingEnd |= open.isPresent();
            open = Optional.empty();
        }
    }

    private RepeatEnd end(XmlElement repeat, RawMeasure bar) {
        var times = repeat.attribute("times").flatMap(XmlNumbers::whole);
        var held = times.filter(each -> each >= 2 && each <= Passes.MOST_PASSES);
        times.filter(each -> held.isEmpty())
                .ifPresent(each -> notices.leftOut(bar.index, Message.of("intake.left.times", each)));
        return new RepeatEnd(held);
    }
}
