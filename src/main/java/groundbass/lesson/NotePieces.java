package groundbass.lesson;

import groundbass.lesson.PageContent.PieceContent;
import groundbass.lesson.Sheets.DrawnSystem;
import groundbass.score.Count;
import groundbass.score.Extract;
import groundbass.score.Line;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Image;

/**
 * Pieces of the sheet that notes show: a picture whose address names bars, {@code ![The turn](bars:3-4)}, or counts of
 * one bar, {@code ![](bar:3:1-2)}.
 */
public final class NotePieces {
    private static final int MOST = 40;
    private static final int MOST_BARS = 16;
    private static final Pattern RANGE =
            Pattern.compile("bars?:([0-9]{1,4})(-([0-9]{1,4}))?(:([0-9]{1,2}[e&a]?)(-([0-9]{1,2}[e&a]?))?)?");
    private static final Pattern MEANT = Pattern.compile("bars?:.*");

    /** Of all pieces together, so that what is drawn for a text does not grow with what the text asks for. */
    private static final int MOST_NOTES = 2_000;

    /** In staff spaces: two bars or three beside words. */
    private static final double WIDTH = 52;

    private NotePieces() {}

    /** Whether an address names bars, there or not. */
    public static boolean isRange(String address) {
        return RANGE.matcher(address).matches();
    }

    /**
     * A piece that the notes ask for and in which something is missing.
     *
     * @param address as typed
     * @param line of the notes, from 1
     */
    public record Piece(String address, int line) {}

    /** What the notes ask for and no reader would see: bars or counts that are not there, or no way of naming any. */
    public static List<Piece> broken(String notes, Line line) {
        var broken = new ArrayList<Piece>();
        each(notes, image -> {
            if (!isWhole(image.getDestination(), line)) {
                broken.add(new Piece(image.getDestination(), NoteLinks.line(image)));
            }
        });
        return List.copyOf(broken);
    }

    /** The pieces that the line has and for which the notes have no words. */
    public static List<Piece> wordless(String notes, Line line) {
        var wordless = new ArrayList<Piece>();
        each(notes, image -> {
            if (image.getFirstChild() == null && isWhole(image.getDestination(), line)) {
                wordless.add(new Piece(image.getDestination(), NoteLinks.line(image)));
            }
        });
        return List.copyOf(wordless);
    }

    /** How many pieces the notes ask for. */
    public static int count(String notes) {
        var found = new AtomicInteger();
        each(notes, image -> found.incrementAndGet());
        return found.get();
    }

    /** What was meant as a piece, there or not; none of a text that is shown as it was typed. */
    private static void each(String notes, Consumer<Image> task) {
        if (NoteText.isTooMuch(notes)) {
            return;
        }
        NoteText.read(notes).accept(new AbstractVisitor() {
            @Override
            public void visit(Image image) {
                if (MEANT.matcher(image.getDestination()).matches()) {
                    task.accept(image);
                }
            }
        });
    }

    private static boolean isWhole(String address, Line line) {
        var parts = RANGE.matcher(address);
        if (!parts.matches() || extract(address, line).isEmpty()) {
            return false;
        }
        int first = Integer.parseInt(parts.group(1));
        int last = parts.group(3) == null ? first : Integer.parseInt(parts.group(3));
        return first <= last && line.indexOf(last) < line.bars().size() && hasCounts(line, last, parts);
    }

    private static boolean hasCounts(Line line, int bar, Matcher parts) {
        var meter = line.inForce().get(line.indexOf(bar)).meter();
        return Stream.of(5, 7).map(parts::group).filter(Objects::nonNull).allMatch(count -> Count.parse(count)
                .filter(there -> there.offset(meter).isBefore(line.bar(bar).to()))
                .isPresent());
    }

    /** The pieces that the notes ask for and the line has, drawn; a piece that would be too much is left out. */
    public static List<PieceContent> of(String notes, Line line, Sheets sheets) {
        var pieces = new ArrayList<PieceContent>();
        int left = MOST_NOTES;
        for (String range : ranges(notes)) {
            var part = extract(range, line);
            int size = part.map(NotePieces::size).orElse(0);
            if (part.isPresent() && size <= left) {
                left -= size;
                pieces.add(new PieceContent(range, draw(sheets, part.get(), "piece-" + pieces.size() + "-")));
            }
        }
        return List.copyOf(pieces);
    }

    private static int size(Line part) {
        return part.bars().stream().mapToInt(bar -> bar.notes().size()).sum();
    }

    private static String draw(Sheets sheets, Line part, String prefix) {
        return sheets.systems(part, WIDTH, prefix).stream()
                .map(DrawnSystem::svg)
                .collect(Collectors.joining());
    }

    private static Set<String> ranges(String notes) {
        var found = new LinkedHashSet<String>();
        if (NoteText.isTooMuch(notes)) {
            return found;
        }
        NoteText.read(notes).accept(new AbstractVisitor() {
            @Override
            public void visit(Image image) {
                if (isRange(image.getDestination()) && found.size() < MOST) {
                    found.add(image.getDestination());
                }
            }
        });
        return found;
    }

    private static Optional<Line> extract(String range, Line line) {
        var parts = RANGE.matcher(range);
        if (!parts.matches()) {
            return Optional.empty();
        }
        int first = Integer.parseInt(parts.group(1));
        if (parts.group(5) != null) {
            return counts(line, first, parts);
        }
        int last = parts.group(3) == null ? first : Integer.parseInt(parts.group(3));
        boolean there = first >= line.firstNumber()
                && first - line.firstNumber() < line.bars().size();
        return there ? Extract.bars(line, first, Math.min(last, first + MOST_BARS - 1)) : Optional.empty();
    }

    private static Optional<Line> counts(Line line, int bar, Matcher parts) {
        var first = Count.parse(parts.group(5));
        var last = parts.group(7) == null ? first : Count.parse(parts.group(7));
        int index = line.indexOf(bar);
        boolean there = index >= 0 && index < line.bars().size();
        return there
                ? first.flatMap(from -> last.flatMap(to -> Extract.counts(line, bar, from, to)))
                : Optional.empty();
    }
}
