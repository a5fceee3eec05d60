package groundbass.web.desk;

import groundbass.Parts;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.upload.Upload;
import groundbass.document.BackingTrack;
import groundbass.document.LineSource;
import groundbass.store.BlobFolder;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** A recording that was sent for an episode, listened to, and made its track: a click on each beat of two short bars, twice. */
public final class Sent {
    private static final int RATE = 8000;
    private static final String LINE = "tempo 120\nbar 1\n1 2 3 4  A0, A0, A0, A0\nbar 2\n1 2 3 4  A3, A3, A3, A3\n";

    private Sent() {}

    public static Upload clicks(Studio studio, Episode episode) {
        var upload = unheard(studio, episode);
        try {
            var blobs = blobs(studio);
            Parts.over(studio.site.groundbass().database().jdbi(), studio.site.clock())
                    .recordings(blobs)
                    .listen();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        var who = studio.site.educator();
        var track = new BackingTrack(upload.id(), upload.blob().sha256(), "Clicks", BackingTrack.Kind.DRUMS);
        var draft = studio.writing.draft(who, episode.id()).orElseThrow();
        var line = new LineSource("", LINE);
        var document = draft.document()
                .edit()
                .mainLine(line)
                .backingTracks(List.of(track))
                .done();
        Studio.done(studio.writing.saveDraft(who, episode.id(), draft.version(), document));
        return upload;
    }

    /** Sent, and no more. */
    public static Upload unheard(Studio studio, Episode episode) {
        var jdbi = studio.site.groundbass().database().jdbi();
        var clock = studio.site.clock();
        try {
            var uploads = Parts.over(jdbi, clock).uploads(blobs(studio));
            var bytes = new ByteArrayInputStream(wav());
            return Studio.done(uploads.accept(studio.site.educator(), episode.id(), "clicks.wav", bytes));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public static String path(Episode episode, Upload upload) {
        return "/desk/episodes/" + episode.id() + "/tracks/" + upload.id();
    }

    private static BlobFolder blobs(Studio studio) throws IOException {
        return new BlobFolder(studio.site.data().resolve("files"), studio.site.clock());
    }

    /** A second of silence and sixteen beats at 120 a minute, each a short tone, the first of each bar higher and louder. */
    public static byte[] wav() {
        int samples = 9 * RATE + RATE / 2;
        var wav = ByteBuffer.allocate(44 + 2 * samples).order(ByteOrder.LITTLE_ENDIAN);
        wav.put(ascii("RIFF")).putInt(36 + 2 * samples).put(ascii("WAVEfmt ")).putInt(16);
        wav.putShort((short) 1).putShort((short) 1).putInt(RATE).putInt(2 * RATE);
        wav.putShort((short) 2).putShort((short) 16).put(ascii("data")).putInt(2 * samples);
        for (int i = 0; i < samples; i++) {
            wav.putShort((short) Math.round(sample(i / (double) RATE - 1)));
        }
        return wav.array();
    }

    private static double sample(double second) {
        int beat = (int) Math.floor(second / 0.5);
        if (beat < 0 || beat >= 16) {
            return 0;
        }
        double since = second - beat * 0.5;
        boolean first = beat % 4 == 0;
        double tone = StrictMath.sin(2 * Math.PI * (first ? 1000 : 600) * since) * StrictMath.exp(-since / 0.05);
        return (first ? 26_000 : 13_000) * tone;
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}
