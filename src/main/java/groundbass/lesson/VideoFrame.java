package groundbass.lesson;

import java.util.Arrays;
import java.util.Optional;

/** The frame of a video that a picture is laid over. */
public enum VideoFrame {
    HD(1920, 1080),
    UHD(3840, 2160);

    /** How much of each side is safe from being cut off or covered (SMPTE ST 2046-1, safe title area; from memory). */
    private static final double SAFE = 0.9;

    private final int width;
    private final int height;

    VideoFrame(int width, int height) {
        this.width = width;
        this.height = height;
    }

    /** By its height in pixels, as such frames are called. */
    public static Optional<VideoFrame> ofHeight(int height) {
        return Arrays.stream(values()).filter(frame -> frame.height == height).findFirst();
    }

    /** The widest that a picture may be, in pixels. */
    public int safeWidth() {
        return (int) (width * SAFE);
    }

    public int safeHeight() {
        return (int) (height * SAFE);
    }

    /** Pixels to a staff space at most: a staff fills no more than a ninth of the height. */
    double largestSpace() {
        return height / 36.0;
    }
}
