package groundbass.store.bucket;

import groundbass.identity.Sha256;
import groundbass.store.Blobs.Lent;
import groundbass.store.fault.FilesAway;
import java.io.IOException;
import java.net.URI;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Base64;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import java.util.stream.Stream;
import software.amazon.awssdk.core.checksums.RequestChecksumCalculation;
import software.amazon.awssdk.core.checksums.ResponseChecksumValidation;
import software.amazon.awssdk.core.exception.SdkClientException;
import software.amazon.awssdk.core.sync.RequestBody;
import software.amazon.awssdk.http.urlconnection.UrlConnectionHttpClient;
import software.amazon.awssdk.services.s3.S3Client;
import software.amazon.awssdk.services.s3.S3Configuration;
import software.amazon.awssdk.services.s3.model.ChecksumMode;
import software.amazon.awssdk.services.s3.model.HeadObjectResponse;
import software.amazon.awssdk.services.s3.model.S3Exception;
import software.amazon.awssdk.services.s3.model.S3Object;
import software.amazon.awssdk.services.s3.presigner.S3Presigner;

/**
 * What we ask an object store, each as one request: names are below the prefix. What it cannot answer for now is
 * {@link FilesAway}; the client has asked three times by then.
 *
 * <p>Where the server is, and who we are, the client reads from its usual places: {@code AWS_ENDPOINT_URL},
 * {@code AWS_REGION}, {@code AWS_ACCESS_KEY_ID}, {@code AWS_SECRET_ACCESS_KEY} and their like; none of them passes
 * through this program.
 */
final class Bucket implements AutoCloseable {
    private static final int NOT_FOUND = 404;
    private static final int OTHER = 412; // precondition failed
    private static final Duration TO_CONNECT = Duration.ofSeconds(2);
    private static final Duration TO_ANSWER = Duration.ofSeconds(20);

    private final BucketName name;
    private final S3Client client;
    /** By the origin for which they sign; there is one for the whole life of a server. */
    private final Map<URI, S3Presigner> signers = new ConcurrentHashMap<>();

    private Bucket(BucketName name, S3Client client) {
        this.name = name;
        this.client = client;
    }

    static Bucket open(BucketName name) throws FilesAway {
        try {
            return new Bucket(
                    name,
                    S3Client.builder()
                            .httpClientBuilder(UrlConnectionHttpClient.builder()
                                    .connectionTimeout(TO_CONNECT)
                                    .socketTimeout(TO_ANSWER))
                            // a server of one's own has no name for each bucket
                            .forcePathStyle(isOwnServer())
                            // we give a checksum of our own where it counts; other servers know no others
                            .requestChecksumCalculation(RequestChecksumCalculation.WHEN_REQUIRED)
                            .responseChecksumValidation(ResponseChecksumValidation.WHEN_REQUIRED)
                            .build());
        } catch (SdkClientException e) {
            throw new FilesAway(name.toString(), e.getMessage());
        }
    }

    private static boolean isOwnServer() {
        return Stream.of("AWS_ENDPOINT_URL_S3", "AWS_ENDPOINT_URL").anyMatch(System.getenv()::containsKey)
                || Stream.of("aws.endpointUrlS3", "aws.endpointUrl").anyMatch(System.getProperties()::containsKey);
    }

    BucketName name() {
        return name;
    }

    /** @param sha256 what the server shall see that it has received (Amazon S3 API, PutObject, x-amz-checksum-sha256) */
    void put(String key, Path file, Sha256 sha256) throws IOException {
        String checksum = checksum(sha256);
        asked(() -> client.putObject(
                request ->
                        request.bucket(name.bucket()).key(name.prefix() + key).checksumSHA256(checksum),
                RequestBody.fromFile(file)));
    }

    /** With a checksum too: a bucket that keeps each object for a time takes none without. */
    void put(String key, byte[] content) throws IOException {
        String checksum = checksum(Sha256.of(content));
        asked(() -> client.putObject(
                request ->
                        request.bucket(name.bucket()).key(name.prefix() + key).checksumSHA256(checksum),
                RequestBody.fromBytes(content)));
    }

    /** As the protocol writes it. */
    static String checksum(Sha256 sha256) {
        return Base64.getEncoder().encodeToString(HexFormat.of().parseHex(sha256.hex()));
    }

    /** @return what the server says of an object; empty where there is none */
    Optional<HeadObjectResponse> head(String key) throws IOException {
        try {
            return Optional.of(asked(() -> client.headObject(request ->
                    request.bucket(name.bucket()).key(name.prefix() + key).checksumMode(ChecksumMode.ENABLED))));
        } catch (NoSuchFileException e) {
            return Optional.empty();
        }
    }

    /** When an object was put there; empty where there is none. */
    Optional<Instant> time(String key) throws IOException {
        return head(key).map(HeadObjectResponse::lastModified);
    }

    /**
     * An object from a byte of it on. Who does not read it to its end says {@code abort}.
     *
     * @throws NoSuchFileException where there is none
     */
    StoredStream get(String key, long from) throws IOException {
        var in = asked(() -> client.getObject(request -> {
            request.bucket(name.bucket()).key(name.prefix() + key);
            if (from > 0) {
                request.range("bytes=" + from + "-");
            }
        }));
        return new StoredStream(in, name.toString());
    }

    /** An address that gives an object to whoever brings it; nothing is asked for that. */
    URI sign(String key, Lent as) throws FilesAway {
        try {
            var signed = signers.computeIfAbsent(as.at(), Bucket::signer)
                    .presignGetObject(request -> request.signatureDuration(as.life())
                            .getObjectRequest(object -> object.bucket(name.bucket())
                                    .key(name.prefix() + key)
                                    .responseContentType(as.mediaType())
                                    .responseContentDisposition(as.disposition().orElse(null))
                                    .responseCacheControl("private, no-store")));
            return URI.create(signed.url().toExternalForm());
        } catch (SdkClientException e) {
            throw new FilesAway(name.toString(), e.getMessage());
        }
    }

    private static S3Presigner signer(URI at) {
        return S3Presigner.builder()
                .endpointOverride(at)
                .serviceConfiguration(S3Configuration.builder()
                        .pathStyleAccessEnabled(isOwnServer())
                        .build())
                .build();
    }

    /**
     * Moves an object, unless others stand in its place by now.
     *
     * @param tag of what is to be moved
     * @return whether that was there; where it is gone, or another, nothing is done
     */
    boolean move(String from, String tag, String to) throws IOException {
        try {
            asked(() -> client.copyObject(request -> request.sourceBucket(name.bucket())
                    .sourceKey(name.prefix() + from)
                    .copySourceIfMatch(tag)
                    .destinationBucket(name.bucket())
                    .destinationKey(name.prefix() + to)));
            asked(() -> client.deleteObject(request ->
                    request.bucket(name.bucket()).key(name.prefix() + from).ifMatch(tag)));
            return true;
        } catch (NoSuchFileException e) {
            return false;
        }
    }

    void delete(String key) throws IOException {
        asked(() -> client.deleteObject(request -> request.bucket(name.bucket()).key(name.prefix() + key)));
    }

    /** Something that is told each object below a folder. */
    @FunctionalInterface
    interface Visitor {
        /** @return whether to go on */
        boolean visit(S3Object object) throws IOException;
    }

    /** Goes through all objects below a folder; what comes or goes meanwhile may or may not be among them. */
    void list(String folder, Visitor visitor) throws IOException {
        var pages = asked(() -> client.listObjectsV2Paginator(
                        request -> request.bucket(name.bucket()).prefix(name.prefix() + folder)))
                .iterator();
        while (asked(pages::hasNext)) {
            for (var object : asked(pages::next).contents()) {
                if (!visitor.visit(object)) {
                    return;
                }
            }
        }
    }

    /** Whether nothing lies below a folder. */
    boolean isEmpty(String folder) throws IOException {
        var empty = new boolean[] {true};
        list(folder, object -> empty[0] = false);
        return empty[0];
    }

    /** What the object's key names, without the folders before it. */
    static Optional<Sha256> digest(S3Object object) {
        return Sha256.parse(object.key().substring(object.key().lastIndexOf('/') + 1));
    }

    /**
     * @throws NoSuchFileException where there is no such object, or not the one that was asked for
     * @throws FilesAway for whatever else went wrong
     */
    private <T> T asked(Supplier<T> request) throws IOException {
        try {
            return request.get();
        } catch (S3Exception e) {
            String code = e.awsErrorDetails() == null
                    ? ""
                    : String.valueOf(e.awsErrorDetails().errorCode());
            boolean gone = e.statusCode() == NOT_FOUND && !code.equals("NoSuchBucket");
            if (gone || e.statusCode() == OTHER) {
                throw new NoSuchFileException(name.toString());
            }
            throw new FilesAway(name.toString(), "the object store refuses: " + e.getMessage());
        } catch (SdkClientException e) {
            throw new FilesAway(name.toString(), "the object store does not answer: " + e.getMessage());
        }
    }

    @Override
    public void close() {
        client.close();
        signers.values().forEach(S3Presigner::close);
    }
}
