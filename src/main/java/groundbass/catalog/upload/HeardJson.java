package groundbass.catalog.upload;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import groundbass.identity.Sha256;
import groundbass.listening.Hearing;
import groundbass.listening.Loudness;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/** What was heard in a recording, as JSON: its facts in the row of the upload, its course in a kept file. */
final class HeardJson {
    private static final String BROKEN = "broken";
    private static final float FULL = 1_000;
    private static final ObjectMapper JSON = new ObjectMapper();

    private record Row(double integrated, double truePeak, String hearing) {}

    /** In thousandths. */
    private record Course(int[] peaks, int[] onsets) {}

    private HeardJson() {}

    static String write(Heard heard) {
        if (heard instanceof Heard.Ready ready) {
            var loudness = ready.loudness();
            return write(new Row(
                    loudness.integrated(), loudness.truePeak(), ready.hearing().hex()));
        }
        return heard instanceof Heard.Broken ? BROKEN : "";
    }

    static Heard read(String text) {
        if (text.isEmpty()) {
            return new Heard.Waiting();
        }
        if (text.equals(BROKEN)) {
            return new Heard.Broken();
        }
        try {
            var row = JSON.readValue(text, Row.class);
            return new Heard.Ready(new Loudness(row.integrated(), row.truePeak()), new Sha256(row.hearing()));
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("not what was heard: " + e.getOriginalMessage(), e);
        }
    }

    static byte[] course(Hearing hearing) {
        return write(new Course(thousandths(hearing.peaks()), thousandths(hearing.onsets())))
                .getBytes(StandardCharsets.UTF_8);
    }

    static Hearing course(byte[] json, Loudness loudness) throws IOException {
        var course = JSON.readValue(json, Course.class);
        return new Hearing(loudness, ones(course.peaks()), ones(course.onsets()));
    }

    private static int[] thousandths(List<Float> values) {
        return values.stream().mapToInt(value -> Math.round(value * FULL)).toArray();
    }

    private static List<Float> ones(int[] thousandths) {
        return Arrays.stream(thousandths).mapToObj(value -> value / FULL).toList();
    }

    private static String write(Object value) {
        try {
            return JSON.writeValueAsString(value);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a record of numbers can be written", e);
        }
    }
}
