package groundbass.web.desk.recording;

import java.util.List;

/** The wave of a recording as a picture: how high it reaches, from left to right, mirrored at its middle line. */
final class WaveDrawing {
    private static final int COLUMNS = 1_000;
    private static final int HALF = 50;

    private WaveDrawing() {}

    /** SVG with presentation attributes only, in the colour of the text around it. */
    static String of(List<Float> peaks) {
        int columns = Math.max(1, Math.min(COLUMNS, peaks.size()));
        var path = new StringBuilder();
        for (int column = 0; column < columns; column++) {
            int from = (int) ((long) column * peaks.size() / columns);
            int to = (int) ((long) (column + 1) * peaks.size() / columns);
            int height = Math.round(Math.min(1, highest(peaks.subList(from, to))) * HALF);
            path.append('M')
                    .append(column)
                    .append(' ')
                    .append(HALF - height)
                    .append('v')
                    .append(2 * height + 1);
        }
        return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + columns + " " + (2 * HALF + 1)
                + "\" preserveAspectRatio=\"none\" role=\"img\"><path stroke=\"currentColor\" fill=\"none\" d=\"" + path
                + "\"/></svg>";
    }

    private static float highest(List<Float> peaks) {
        return peaks.stream().max(Float::compare).orElse(0f);
    }
}
