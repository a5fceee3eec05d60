package groundbass.web.desk.notes;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.upload.Picture;
import groundbass.catalog.upload.Pictures;
import groundbass.catalog.upload.TakenOut;
import groundbass.catalog.upload.TakingOut;
import groundbass.document.EpisodeDocument;
import groundbass.effort.Busy;
import groundbass.form.FieldProblem;
import groundbass.lesson.NotePictures;
import groundbass.lesson.NotePieces;
import groundbass.lesson.Sheets;
import groundbass.linetext.LineText;
import groundbass.text.Messages;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.desk.room.Room;
import groundbass.web.desk.room.RoomField;
import groundbass.web.desk.room.RoomForm;
import groundbass.web.desk.room.RoomPage;
import groundbass.web.desk.room.RoomView;
import groundbass.web.desk.room.Rooms;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.FieldProblems;
import groundbass.web.view.NoteViews;
import groundbass.web.view.NoteViews.PhotoView;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Locale;

/** The room of the notes: as they are typed, and beside it as students see them. */
public final class NotesPages implements PageGroup, RoomPage {
    private static final int HEADINGS = 3;

    private final DeskContext desk;
    private final Rooms rooms;
    private final EpisodeService writing;
    private final Pictures pictures;
    private final TakingOut takingOut;

    public NotesPages(DeskContext desk, Rooms rooms, EpisodeService writing, Pictures pictures, TakingOut takingOut) {
        this.takingOut = takingOut;
        this.pictures = pictures;
        this.desk = desk;
        this.rooms = rooms;
        this.writing = writing;
    }

    @Override
    public void addTo(Routes routes) {
        rooms.open(routes, this);
        routes.post(DeskContext.EPISODE + "/notes/look", Role.EDUCATOR, this::look);
    }

    @Override
    public Room room() {
        return Room.NOTES;
    }

    @Override
    public List<RoomField> fields(EpisodeDocument document) {
        return List.of(RoomField.of("notes", "desk.editor.notes.text", document.notes()));
    }

    @Override
    public RoomForm read(Context ctx) {
        String notes = FormParameters.text(ctx, "notes");
        return episode -> before -> before.edit().notes(notes).done();
    }

    @Override
    public void show(Context ctx, Episode episode, RoomView room, EpisodeDocument document) {
        show(ctx, episode, room, document, "");
    }

    private void show(Context ctx, Episode episode, RoomView room, EpisodeDocument document, String words) {
        var sent = pictures.of(episode.id()).stream()
                .map(picture -> row(episode, picture, document.notes()))
                .toList();
        var view = new View(
                room, document.notes(), shown(ctx, episode, document), sent, takingOut.pictures(episode.id()), words);
        desk.pages().show(ctx, "desk/notes", view);
    }

    /** The room as it is saved, with what kept a picture from being taken, and the words that were typed for it. */
    void showAgain(Context ctx, List<FieldProblem> problems, String words) {
        rooms.showAgain(
                ctx,
                this,
                new FieldProblems(problems),
                (episode, room, stored) -> show(ctx, episode, room, stored, words));
    }

    /** Leads to the room, which then says {@code flash.NAME}. */
    void back(Context ctx, String name) {
        rooms.back(ctx, this, name);
    }

    private static PictureRow row(Episode episode, Picture picture, String notes) {
        return new PictureRow(
                path(episode, picture),
                picture.words(),
                NotePictures.typed(picture.id(), picture.words()),
                notes.contains(NotePictures.address(picture.id())));
    }

    private static String path(Episode episode, Picture picture) {
        return DeskContext.path(episode) + "/pictures/" + picture.id();
    }

    /** Whatever the machine has to do, the text can be opened. */
    private String shown(Context ctx, Episode episode, EpisodeDocument document) {
        try {
            return html(ctx, episode, document);
        } catch (Busy busy) {
            return "";
        }
    }

    /** What is typed at this moment, as students would see it; nothing is saved. */
    private void look(Context ctx) {
        var episode = desk.episode(ctx);
        var document = writing.draft(desk.educator(ctx), episode.id())
                .orElseThrow(NotFoundResponse::new)
                .document();
        var typed = document.edit().notes(FormParameters.text(ctx, "notes")).done();
        String language = typed.settings().language();
        desk.pages().show(ctx, "desk/notes-look", new Look(html(ctx, episode, typed), language));
    }

    private String html(Context ctx, Episode episode, EpisodeDocument document) {
        var messages = Messages.of(Locale.forLanguageTag(document.settings().language()));
        var sheets = new Sheets(messages).with(desk.style(episode));
        return desk.work(ctx, episode, () -> {
            var line = LineText.read(document.mainLine().text()).line();
            return NoteViews.html(
                    document.notes(),
                    HEADINGS,
                    NotePieces.of(document.notes(), line, sheets),
                    photos(episode, document.notes()));
        });
    }

    private List<PhotoView> photos(Episode episode, String notes) {
        return NotePictures.ids(notes).stream()
                .flatMap(id -> pictures.find(id).stream())
                .map(picture -> new PhotoView(
                        NotePictures.address(picture.id()), path(episode, picture), picture.wide(), picture.high()))
                .toList();
    }

    /**
     * @param shown the notes as students see them, as HTML
     * @param pictures that were sent for them
     * @param takenOut those that can be put back
     * @param words typed for a picture that was not taken
     */
    public record View(
            RoomView room,
            String notes,
            String shown,
            List<PictureRow> pictures,
            List<TakenOut> takenOut,
            String words) {
        public long unused() {
            return pictures.stream().filter(picture -> !picture.used()).count();
        }
    }

    /**
     * A picture that was sent.
     *
     * @param typed what sets it into the notes
     * @param used whether they show it
     */
    public record PictureRow(String path, String words, String typed, boolean used) {}

    /** What the script puts into the page. */
    public record Look(String shown, String language) {}
}
