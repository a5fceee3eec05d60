package groundbass.archive;

import groundbass.archive.file.DamagedFile;
import groundbass.archive.file.Facts;
import groundbass.archive.file.Json;
import groundbass.document.BackingTrack;
import groundbass.document.BarMap;
import groundbass.document.Clearance;
import groundbass.document.DocumentSettings;
import groundbass.document.EpisodeDocument;
import groundbass.document.GrooveSource;
import groundbass.document.LessonFacts;
import groundbass.document.LessonFacts.CoursePointer;
import groundbass.document.Level;
import groundbass.document.Licence;
import groundbass.document.LineSource;
import groundbass.document.Rights;
import groundbass.document.UploadId;
import groundbass.document.WalkthroughEdit;
import groundbass.identity.Sha256;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Everything that a lesson says, as files that people can read and write, and back without a loss. Texts stand as they
 * were typed; a file that would be empty is not there.
 */
final class DocumentFiles {
    static final String FACTS = "episode.properties";
    static final String LINE = "line.txt";

    private static final String NOTES = "notes.md";
    private static final String GROOVE = "groove.txt";
    private static final String SCRIPT = "script.txt";
    private static final String WALKTHROUGH = "walkthrough.json";
    private static final String RECORDINGS = "recordings.json";

    private DocumentFiles() {}

    /** Where the files of one document are read from; empty where there is no such file. */
    @FunctionalInterface
    interface Texts {
        Optional<String> find(String name) throws DamagedFile;
    }

    // --- out

    /** The files, in the order in which they are written. */
    static Map<String, String> write(EpisodeDocument document) {
        var files = new LinkedHashMap<String, String>();
        files.put(FACTS, facts(document).text());
        put(files, LINE, document.mainLine().text());
        put(files, NOTES, document.notes());
        for (int i = 0; i < document.exercises().size(); i++) {
            files.put(exercise(i + 1), document.exercises().get(i).text());
        }
        put(files, GROOVE, document.groove().text());
        put(files, SCRIPT, document.script());
        if (!document.walkthroughEdits().isEmpty()) {
            files.put(WALKTHROUGH, Json.write(document.walkthroughEdits()));
        }
        if (!document.backingTracks().isEmpty()) {
            files.put(
                    RECORDINGS,
                    Json.write(document.backingTracks().stream().map(Track::of).toList()));
        }
        return files;
    }

    private static void put(Map<String, String> files, String name, String text) {
        if (!text.isEmpty()) {
            files.put(name, text);
        }
    }

    private static String exercise(int number) {
        return "exercise-" + number + ".txt";
    }

    private static Facts facts(EpisodeDocument document) {
        var rights = document.rights();
        var settings = document.settings();
        var facts = new Facts()
                .put("form", Integer.toString(document.form()))
                .put("title", document.title())
                .put("level", document.level().code())
                .put("summary", document.summary())
                .put("tempos", settings.tempos())
                .put("rounds", settings.rounds())
                .put("language", settings.language())
                .put("names", settings.naming())
                .put("groove", document.groove().name())
                .put("feel", document.groove().feel())
                .put("bass", document.groove().bass())
                .put("chords", document.groove().chords())
                .put("composer", rights.composer())
                .put("credit", rights.credit())
                .put("rights", rights.statement())
                .put("clearance", rights.clearance().word());
        facts.putUnless("", "licence", rights.licence().reference());
        facts.putUnless("", "licence.from", rights.licence().from());
        facts.putUnless("", "licence.until", rights.licence().until());
        facts.putUnless("", "line.name", document.mainLine().name());
        for (int i = 0; i < document.exercises().size(); i++) {
            facts.putUnless("", exerciseName(i + 1), document.exercises().get(i).name());
        }
        put(facts, document.facts());
        return facts;
    }

    private static String exerciseName(int number) {
        return "exercise." + number + ".name";
    }

    private static void put(Facts facts, LessonFacts told) {
        facts.putUnless("", "video", told.video())
                .putUnless("", "chapters", told.chapters())
                .putUnless("", "gear", told.gear());
        for (int i = 0; i < told.courses().size(); i++) {
            facts.put(course(i + 1, "title"), told.courses().get(i).title())
                    .put(course(i + 1, "address"), told.courses().get(i).address());
        }
    }

    private static String course(int number, String part) {
        return "course." + number + "." + part;
    }

    /** A recording as the file says it. */
    private record Track(String upload, String sha256, String title, String kind, List<BarMap.Start> bars, double end) {
        static Track of(BackingTrack track) {
            return new Track(
                    track.upload().value(),
                    track.sha256().hex(),
                    track.title(),
                    track.kind().name(),
                    track.map().bars(),
                    track.map().end());
        }

        BackingTrack track() throws DamagedFile {
            var what = Arrays.stream(BackingTrack.Kind.values())
                    .filter(one -> one.name().equals(kind))
                    .findFirst()
                    .orElseThrow(() -> DamagedFile.of("archive.problem.json"));
            try {
                return new BackingTrack(new UploadId(upload), new Sha256(sha256), title, what, new BarMap(bars, end));
            } catch (IllegalArgumentException | NullPointerException e) { // from outside: anything may be missing
                throw DamagedFile.of("archive.problem.json");
            }
        }
    }

    // --- in

    /**
     * @param usual the title where the files say none
     * @throws DamagedFile where a file is not what its name says
     */
    static EpisodeDocument read(Texts texts, String usual) throws DamagedFile {
        var facts = facts(texts);
        int form = form(facts.word("form"));
        var level = Level.parse(facts.word("level")).orElse(Level.INTERMEDIATE);
        return new EpisodeDocument(
                form,
                facts.find("title").orElse(usual),
                level,
                facts.get("summary"),
                texts.find(NOTES).orElse(""),
                new LineSource(facts.get("line.name"), texts.find(LINE).orElse("")),
                exercises(texts, facts),
                tracks(texts),
                groove(texts, facts),
                rights(facts),
                edits(texts),
                texts.find(SCRIPT).orElse(""),
                told(facts),
                settings(facts));
    }

    private static GrooveSource groove(Texts texts, Facts facts) throws DamagedFile {
        return new GrooveSource(
                facts.get("groove"),
                texts.find(GROOVE).orElse(""),
                facts.word("feel"),
                facts.word("bass"),
                facts.word("chords"));
    }

    private static Facts facts(Texts texts) throws DamagedFile {
        try {
            return Facts.read(texts.find(FACTS).orElse(""));
        } catch (DamagedFile e) {
            throw e.in(FACTS);
        }
    }

    private static int form(String typed) throws DamagedFile {
        if (typed.isEmpty()) {
            return EpisodeDocument.FORM;
        }
        if (!typed.matches("[1-9][0-9]{0,3}") || Integer.parseInt(typed) > EpisodeDocument.FORM) {
            throw DamagedFile.of("archive.problem.later").in(FACTS);
        }
        return Integer.parseInt(typed);
    }

    private static List<LineSource> exercises(Texts texts, Facts facts) throws DamagedFile {
        var lines = new ArrayList<LineSource>();
        for (var text = texts.find(exercise(1)); text.isPresent(); text = texts.find(exercise(lines.size() + 1))) {
            lines.add(new LineSource(facts.get(exerciseName(lines.size() + 1)), text.get()));
        }
        return lines;
    }

    private static Rights rights(Facts facts) {
        return new Rights(
                facts.get("composer"),
                facts.get("credit"),
                facts.get("rights"),
                Clearance.parse(facts.word("clearance")).orElse(Clearance.OPEN),
                new Licence(facts.get("licence"), facts.get("licence.from"), facts.get("licence.until")));
    }

    private static LessonFacts told(Facts facts) {
        var courses = new ArrayList<CoursePointer>();
        for (int i = 1; facts.find(course(i, "title")).isPresent(); i++) {
            courses.add(new CoursePointer(facts.get(course(i, "title")), facts.get(course(i, "address"))));
        }
        return new LessonFacts(facts.get("video"), facts.get("gear"), courses, facts.get("chapters"));
    }

    private static DocumentSettings settings(Facts facts) {
        var usual = DocumentSettings.USUAL;
        return new DocumentSettings(
                facts.find("language").orElse(usual.language()),
                facts.find("tempos").orElse(usual.tempos()),
                facts.find("rounds").orElse(usual.rounds()),
                facts.find("names").orElse(usual.naming()));
    }

    private static List<WalkthroughEdit> edits(Texts texts) throws DamagedFile {
        var text = texts.find(WALKTHROUGH);
        return text.isPresent() ? Json.list(text.get(), WalkthroughEdit[].class) : List.of();
    }

    private static List<BackingTrack> tracks(Texts texts) throws DamagedFile {
        var tracks = new ArrayList<BackingTrack>();
        var text = texts.find(RECORDINGS);
        if (text.isPresent()) {
            for (Track track : Json.list(text.get(), Track[].class)) {
                tracks.add(track.track());
            }
        }
        return tracks;
    }
}
