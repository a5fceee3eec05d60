package groundbass.document;

import java.util.List;

/** Gathers what is to be different in an {@link EpisodeDocument}; the rest stays as it was. */
public final class DocumentEdit {
    private String title;
    private Level level;
    private String summary;
    private String notes;
    private LineSource mainLine;
    private List<LineSource> exercises;
    private List<BackingTrack> backingTracks;
    private GrooveSource groove;
    private Rights rights;
    private List<WalkthroughEdit> walkthroughEdits;
    private String script;
    private LessonFacts facts;
    private DocumentSettings settings;

    DocumentEdit(EpisodeDocument before) {
        this.title = before.title();
        this.level = before.level();
        this.summary = before.summary();
        this.notes = before.notes();
        this.mainLine = before.mainLine();
        this.exercises = before.exercises();
        this.backingTracks = before.backingTracks();
        this.groove = before.groove();
        this.rights = before.rights();
        this.walkthroughEdits = before.walkthroughEdits();
        this.script = before.script();
        this.facts = before.facts();
        this.settings = before.settings();
    }

    public DocumentEdit title(String changed) {
        this.title = changed;
        return this;
    }

    public DocumentEdit level(Level changed) {
        this.level = changed;
        return this;
    }

    public DocumentEdit summary(String changed) {
        this.summary = changed;
        return this;
    }

    public DocumentEdit notes(String changed) {
        this.notes = changed;
        return this;
    }

    public DocumentEdit mainLine(LineSource changed) {
        this.mainLine = changed;
        return this;
    }

    public DocumentEdit exercises(List<LineSource> changed) {
        this.exercises = changed;
        return this;
    }

    public DocumentEdit backingTracks(List<BackingTrack> changed) {
        this.backingTracks = changed;
        return this;
    }

    public DocumentEdit groove(GrooveSource changed) {
        this.groove = changed;
        return this;
    }

    public DocumentEdit rights(Rights changed) {
        this.rights = changed;
        return this;
    }

    public DocumentEdit walkthroughEdits(List<WalkthroughEdit> changed) {
        this.walkthroughEdits = changed;
        return this;
    }

    public DocumentEdit script(String changed) {
        this.script = changed;
        return this;
    }

    public DocumentEdit facts(LessonFacts changed) {
        this.facts = changed;
        return this;
    }

    public DocumentEdit settings(DocumentSettings changed) {
        this.settings = changed;
        return this;
    }

    public EpisodeDocument done() {
        return new EpisodeDocument(
                EpisodeDocument.FORM,
                title,
                level,
                summary,
                notes,
                mainLine,
                exercises,
                backingTracks,
                groove,
                rights,
                walkthroughEdits,
                script,
                facts,
                settings);
    }
}
