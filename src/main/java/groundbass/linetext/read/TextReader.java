package groundbass.linetext.read;

import groundbass.linetext.problem.BarProblems;
import groundbass.linetext.problem.HeadProblems;
import groundbass.linetext.problem.Nearest;
import groundbass.linetext.problem.Problems;
import groundbass.linetext.problem.TextProblems;
import groundbass.linetext.source.Keyword;
import groundbass.linetext.source.Keyword.Reach;
import groundbass.linetext.source.Limits;
import groundbass.linetext.source.Token;
import groundbass.linetext.source.Tokens;
import groundbass.linetext.typed.CountLine;
import groundbass.linetext.typed.RawBar;
import groundbass.linetext.typed.RawBar.Before;
import groundbass.linetext.typed.RawBar.Head;
import groundbass.linetext.typed.Setting;
import groundbass.remark.Source;
import groundbass.remark.Span;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Cuts a text into a header and bars as typed, line by line; nothing has a time yet. */
public final class TextReader {
    private final Source source;
    private final Problems problems;
    private final List<Setting> header = new ArrayList<>();
    private final List<RawBar> bars = new ArrayList<>();
    private Before pending = new Before();
    private long events;
    private boolean full;

    public TextReader(Source source, Problems problems) {
        this.source = source;
        this.problems = problems;
    }

    /** A text as typed. */
    public record RawText(List<Setting> header, List<RawBar> bars) {}

    public RawText read() {
        int number = 1;
        for (var line : source.lines()) {
            if (full) {
                break;
            }
            line(number++, line);
        }
        if (!full) {
            pending.first().ifPresent(span -> problems.add(BarProblems.nothingAfter(span)));
        }
        return new RawText(header, bars);
    }

    private void line(int number, String text) {
        if (text.length() > Limits.LONGEST_LINE) {
            problems.add(TextProblems.lineTooLong(new Span(number, 1, 1), text.length()));
            return;
        }
        var scanner = new Scanner(number, text, problems);
        if (scanner.isBlank()) {
            return;
        }
        if (scanner.startsWithDigit()) {
            countLine(scanner);
            return;
        }
        var first = scanner.word();
        keyword(first).ifPresent(word -> statement(word, scanner));
    }

    /** A word that is one slip away from a known one is read as that one, so that one slip is one problem. */
    private Optional<Keyword> keyword(Token first) {
        var known = Keyword.of(first.text());
        if (known.isPresent()) {
            return known;
        }
        problems.add(TextProblems.unknownLine(first.span(), first.text()));
        return Nearest.to(first.text(), Keyword.WORDS).flatMap(Keyword::of);
    }

    private void statement(Keyword word, Scanner scanner) {
        switch (word) {
            case TITLE, COMPOSER, RIGHTS, SECTION -> {
                var text = scanner.freeText();
                SettingReader.ofText(word, scanner.whole(), text, problems).ifPresent(this::put);
            }
            case FORM, KEY, METER, TEMPO, FEEL, STRINGS, FRETS, STYLE, SLOWING, NEW ->
                new SettingReader(word, scanner.tokens(""), problems).read().ifPresent(this::put);
            case REPEAT, ENDING, SEGNO, CODA, TO, FINE, DA, DAL -> sign(word, scanner.tokens(""));
            case BAR -> bar(new BarHeadReader(scanner.tokens(",="), problems).read());
        }
    }

    private void put(Setting setting) {
        boolean atHead = bars.isEmpty() && setting.word().reach() != Reach.BAR;
        if (!atHead && setting.word().reach() == Reach.HEAD) {
            problems.add(HeadProblems.onlyAtHead(setting.span(), setting.word()));
            return;
        }
        var list = atHead ? header : pending.settings;
        var first =
                list.stream().filter(other -> other.word() == setting.word()).findFirst();
        if (first.isPresent()) {
            problems.add(HeadProblems.saidTwice(
                    setting.span(), setting.word(), first.get().span()));
        } else {
            list.add(setting);
        }
    }

    private void sign(Keyword word, Tokens tokens) {
        var current = bars.isEmpty() ? Optional.<RawBar>empty() : Optional.of(bars.get(bars.size() - 1));
        new SignReader(tokens, problems, pending, current).read(word);
    }

    private void bar(Head head) {
        if (bars.size() >= Limits.MOST_BARS) {
            problems.add(TextProblems.tooManyBars(head.span()));
            full = true;
            return;
        }
        bars.add(new RawBar(head, pending));
        pending = new Before();
    }

    private void countLine(Scanner scanner) {
        var tokens = scanner.tokens(",+*");
        var span = tokens.whole();
        var read = new CountLineReader(tokens, problems).read();
        if (bars.isEmpty() || !pending.isEmpty()) {
            problems.add(BarProblems.noBar(span));
            bar(Head.plain(span));
        }
        read.ifPresentOrElse(this::count, () -> bars.get(bars.size() - 1).unread = true);
    }

    private void count(CountLine line) {
        events += (long) line.events().size() * line.targets().size();
        if (events > Limits.MOST_EVENTS) {
            problems.add(TextProblems.tooManyEvents(line.span()));
            full = true;
        } else if (!full) {
            bars.get(bars.size() - 1).counts.add(line);
        }
    }
}
