package groundbass.script;

import groundbass.score.Line;
import groundbass.script.captions.Script;
import groundbass.script.captions.Timestamp;
import groundbass.script.thread.talk.Turns;
import groundbass.text.Messages;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** The chapters of a lesson's video: proposed from timed captions, edited as a list of times, written for players. */
public final class Chapters {
    public static final int MOST = 100;

    private static final Pattern ROW =
            Pattern.compile("(?:(\\d{1,2}):)?(\\d{1,3}):([0-5]\\d)(?:\\.\\d{1,3})?\\s+(\\S.*)");

    private Chapters() {}

    /**
     * Where a speaker turns to a bar for the first time, and where the whole line is played, slowly or at full speed.
     *
     * @param language the script's
     * @param messages the language of the titles
     */
    public static List<Chapter> propose(Script script, Line line, Locale language, Messages messages) {
        if (!script.isTimed()) {
            return List.of();
        }
        var found = new ArrayList<Chapter>();
        for (var turn : Turns.of(script.spoken(), line, language)) {
            String title = title(turn, messages);
            if (found.stream().noneMatch(chapter -> chapter.title().equals(title))) {
                found.add(new Chapter(script.timeAt(turn.from()).orElse(0), title));
            }
        }
        if (!found.isEmpty() && found.get(0).from() > 2000) {
            found.add(0, new Chapter(0, messages.say("script.chapter.start")));
        }
        return found.stream().limit(MOST).toList();
    }

    private static String title(Turns.Turn turn, Messages messages) {
        if (turn instanceof Turns.ToBars bars) {
            return bars.first() == bars.last()
                    ? messages.say("script.chapter.bar", String.valueOf(bars.first()))
                    : messages.say("script.chapter.bars", String.valueOf(bars.first()), String.valueOf(bars.last()));
        }
        return messages.say(
                "script.chapter." + ((Turns.ToWhole) turn).how().name().toLowerCase(Locale.ROOT));
    }

    /**
     * Reads a list of times, a row each: {@code 4:05 Bar 3}.
     *
     * @param rows what could not be read is in {@link Listed#problems()}, by its row
     */
    public static Listed read(String rows) {
        var chapters = new ArrayList<Chapter>();
        var problems = new ArrayList<Integer>();
        var lines = rows.lines().toList();
        for (int i = 0; i < lines.size(); i++) {
            String row = lines.get(i).strip();
            var chapter = chapter(row);
            chapter.ifPresent(chapters::add);
            if (!row.isEmpty() && (chapter.isEmpty() || chapters.size() > MOST)) {
                problems.add(i + 1);
            }
        }
        return new Listed(
                chapters.stream()
                        .limit(MOST)
                        .sorted(Comparator.comparingLong(Chapter::from))
                        .toList(),
                problems);
    }

    /**
     * What came of reading a list.
     *
     * @param problems numbers of rows that are no chapter, from 1
     */
    public record Listed(List<Chapter> chapters, List<Integer> problems) {
        public Listed {
            chapters = List.copyOf(chapters);
            problems = List.copyOf(problems);
        }
    }

    private static Optional<Chapter> chapter(String row) {
        var matcher = ROW.matcher(row);
        if (!matcher.matches() || matcher.group(4).length() > Chapter.LONGEST_TITLE) {
            return Optional.empty();
        }
        long hours = matcher.group(1) == null ? 0 : Long.parseLong(matcher.group(1));
        long seconds = (hours * 60 + Long.parseLong(matcher.group(2))) * 60 + Long.parseLong(matcher.group(3));
        return Optional.of(new Chapter(seconds * 1000, matcher.group(4)));
    }

    /** A list of times as people write it, a row each. */
    public static String list(List<Chapter> chapters) {
        var text = new StringBuilder();
        chapters.forEach(chapter ->
                text.append(chapter.time()).append(' ').append(chapter.title()).append('\n'));
        return text.toString();
    }

    /**
     * A chapters file (W3C WebVTT, "chapter cues").
     *
     * @param end where the recording ends, in milliseconds; the last chapter lasts a second at least
     */
    public static String webVtt(List<Chapter> chapters, long end) {
        var text = new StringBuilder("WEBVTT\n");
        for (int i = 0; i < chapters.size(); i++) {
            var chapter = chapters.get(i);
            long next = i + 1 < chapters.size() ? chapters.get(i + 1).from() : end;
            text.append('\n')
                    .append(Timestamp.print(chapter.from()))
                    .append(" --> ")
                    .append(Timestamp.print(Math.max(next, chapter.from() + 1000)))
                    .append('\n')
                    .append(escaped(chapter.title()))
                    .append('\n');
        }
        return text.toString();
    }

    private static String escaped(String title) {
        return title.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}
