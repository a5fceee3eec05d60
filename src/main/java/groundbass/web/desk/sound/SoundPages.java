package groundbass.web.desk.sound;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.upload.Recordings;
import groundbass.catalog.upload.TakenOut;
import groundbass.catalog.upload.TakingOut;
import groundbass.catalog.upload.Upload;
import groundbass.catalog.upload.Uploads;
import groundbass.document.BackingTrack;
import groundbass.document.EpisodeDocument;
import groundbass.document.GrooveSource;
import groundbass.document.UploadId;
import groundbass.form.FieldProblem;
import groundbass.groove.Groove;
import groundbass.groove.GrooveLibrary;
import groundbass.groove.GrooveText;
import groundbass.remark.Source;
import groundbass.text.Message;
import groundbass.text.Messages;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.desk.line.RemarkView;
import groundbass.web.desk.recording.TrackForm;
import groundbass.web.desk.recording.TrackRow;
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
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The room of a lesson's sound: who plays along, how fast it is practised, which recordings come with it. */
public final class SoundPages implements PageGroup, RoomPage {
    private final DeskContext desk;
    private final Rooms rooms;
    private final Uploads uploads;
    private final Recordings recordings;
    private final TakingOut takingOut;

    public SoundPages(DeskContext desk, Rooms rooms, Uploads uploads, Recordings recordings, TakingOut takingOut) {
        this.desk = desk;
        this.rooms = rooms;
        this.uploads = uploads;
        this.recordings = recordings;
        this.takingOut = takingOut;
    }

    @Override
    public void addTo(Routes routes) {
        rooms.open(routes, this);
        routes.post(DeskContext.EPISODE + "/sound/look", Role.EDUCATOR, this::look);
    }

    @Override
    public Room room() {
        return Room.SOUND;
    }

    @Override
    public List<RoomField> fields(EpisodeDocument document) {
        return List.of(
                RoomField.of(
                        "grooveName",
                        "desk.editor.groove.name",
                        document.groove().name()),
                RoomField.of("groove", "desk.editor.groove", document.groove().text()),
                RoomField.of(
                        "grooveFeel",
                        "desk.editor.groove.feel",
                        document.groove().feel()),
                RoomField.of(
                        "grooveBass",
                        "desk.editor.groove.bass",
                        document.groove().bass()),
                RoomField.of(
                        "grooveChords",
                        "desk.editor.groove.chords",
                        document.groove().chords()),
                RoomField.of(
                        "settings.tempos",
                        "desk.editor.tempos",
                        document.settings().tempos()),
                RoomField.of(
                        "settings.rounds",
                        "desk.editor.rounds",
                        document.settings().rounds()),
                new RoomField("", Message.of("desk.tracks.title"), tracks(document)));
    }

    private static String tracks(EpisodeDocument document) {
        return document.backingTracks().stream()
                .map(track -> track.upload() + " " + track.kind() + " " + track.title())
                .collect(Collectors.joining("\n"));
    }

    @Override
    public RoomForm read(Context ctx) {
        return SoundForm.read(ctx, uploads);
    }

    /** The room as it is saved, with what kept a recording from being taken. */
    void showAgain(Context ctx, List<FieldProblem> problems) {
        rooms.showAgain(ctx, this, new FieldProblems(problems));
    }

    /** Leads to the room, which then says {@code flash.NAME}. */
    void back(Context ctx, String name) {
        rooms.back(ctx, this, name);
    }

    @Override
    public void show(Context ctx, Episode episode, RoomView room, EpisodeDocument document) {
        desk.pages()
                .show(
                        ctx,
                        "desk/sound",
                        new View(
                                room,
                                document.groove(),
                                remarks(ctx, document.groove().text()),
                                document.settings().tempos(),
                                document.settings().rounds(),
                                tracks(episode, document),
                                takingOut.recordings(episode.id())));
    }

    /** Those that the lesson holds, then those that were sent for it beside. */
    private List<TrackRow> tracks(Episode episode, EpisodeDocument document) {
        var sent = uploads.of(episode.id());
        Map<UploadId, Upload> known = sent.stream().collect(Collectors.toMap(Upload::id, Function.identity()));
        var used = document.backingTracks().stream().map(TrackForm::of).toList();
        var others = sent.stream()
                .filter(upload ->
                        used.stream().noneMatch(track -> track.upload().equals(upload.id())))
                .map(upload -> TrackForm.of(upload, false));
        return Stream.concat(used.stream(), others)
                .map(track -> TrackRow.of(
                        track, Optional.ofNullable(known.get(track.upload())), recordings.heard(track.upload())))
                .toList();
    }

    /** What is to be said of drums as they are typed at this moment. */
    private void look(Context ctx) {
        desk.episode(ctx);
        desk.pages().show(ctx, "desk/sound-look", new Look(remarks(ctx, FormParameters.text(ctx, "groove"))));
    }

    private List<RemarkView> remarks(Context ctx, String text) {
        var words = Messages.of(desk.pages().reader(ctx).locale());
        return text.isBlank() ? List.of() : RemarkView.of(GrooveText.read(text).problems(), Source.of("", text), words);
    }

    /**
     * What the page shows.
     *
     * @param takenOut recordings that can be put back
     */
    public record View(
            RoomView room,
            GrooveSource groove,
            List<RemarkView> remarks,
            String tempos,
            String rounds,
            List<TrackRow> tracks,
            List<TakenOut> takenOut) {
        public List<String> grooves() {
            return GrooveLibrary.all().stream().map(Groove::name).toList();
        }

        public List<String> feels() {
            return GrooveSource.FEELS;
        }

        public List<String> basses() {
            return GrooveSource.BASSES;
        }

        public List<String> chords() {
            return GrooveSource.CHORDS;
        }

        public String grooveExample() {
            return GrooveText.print(GrooveLibrary.all().get(0));
        }

        public List<BackingTrack.Kind> kinds() {
            return List.of(BackingTrack.Kind.values());
        }
    }

    /** What the script puts into the page. */
    public record Look(List<RemarkView> remarks) {}
}
