package groundbass.audio;

/** The kinds of recording that can be uploaded. */
public enum AudioFormat {
    WAV("audio/wav", "wav"),
    MP3("audio/mpeg", "mp3"), // RFC 3003
    FLAC("audio/flac", "flac"); // RFC 9639

    private final String mediaType;
    private final String extension;

    AudioFormat(String mediaType, String extension) {
        this.mediaType = mediaType;
        this.extension = extension;
    }

    public String mediaType() {
        return mediaType;
    }

    /** For file names, without a dot. */
    public String extension() {
        return extension;
    }
}
