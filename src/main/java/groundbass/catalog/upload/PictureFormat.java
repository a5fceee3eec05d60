package groundbass.catalog.upload;

import groundbass.identity.TextValue;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What a picture may be, told by how its content begins. */
public enum PictureFormat implements TextValue {
    /** PNG (Third Edition), section 5.2. */
    PNG(0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'),
    /** JPEG: ITU-T T.81, annex B.1.1.3: start of image, and the next marker. */
    JPEG(0xff, 0xd8, 0xff);

    private final int[] signature;

    PictureFormat(int... signature) {
        this.signature = signature;
    }

    static Optional<PictureFormat> of(byte[] content) {
        return Arrays.stream(values()).filter(format -> format.begins(content)).findFirst();
    }

    private boolean begins(byte[] content) {
        for (int i = 0; i < signature.length; i++) {
            if (content.length <= i || (content[i] & 0xff) != signature[i]) {
                return false;
            }
        }
        return true;
    }

    public String mediaType() {
        return "image/" + value();
    }

    /** Without a dot. */
    public String extension() {
        return this == JPEG ? "jpg" : value();
    }

    @Override
    public String value() {
        return name().toLowerCase(Locale.ROOT);
    }
}
