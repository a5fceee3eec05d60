package groundbass.store.bucket;

import java.util.Optional;
import java.util.regex.Pattern;

/**
 * A bucket and where in it the files of a site lie, typed as {@code s3://bucket} or {@code s3://bucket/prefix}.
 *
 * @param prefix with a slash at its end, or empty
 */
public record BucketName(String bucket, String prefix) {
    /** General purpose buckets' names: Amazon S3 User Guide, "Bucket naming rules"; of a prefix what needs no escaping. */
    private static final Pattern FORM =
            Pattern.compile("s3://([a-z0-9][a-z0-9.-]{1,61}[a-z0-9])((?:/[A-Za-z0-9._-]+)*)/?");

    public static Optional<BucketName> parse(String text) {
        var matched = FORM.matcher(text);
        return matched.matches()
                ? Optional.of(new BucketName(matched.group(1), prefix(matched.group(2))))
                : Optional.empty();
    }

    private static String prefix(String path) {
        return path.isEmpty() ? "" : path.substring(1) + "/";
    }

    @Override
    public String toString() {
        return "s3://" + bucket + "/" + prefix;
    }
}
