package groundbass.release;

import groundbass.identity.TextValue;
import groundbass.store.fault.Causes;
import groundbass.store.fault.DamagedFileException;
import groundbass.store.fault.DatabaseAway;
import groundbass.store.fault.FilesAway;
import groundbass.text.Message;
import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/** How far the building of a release has come. */
public sealed interface BuildState {
    /** Nobody has begun. */
    record Waiting() implements BuildState {}

    /** Under way: so many of its steps are done. */
    record Building(int done, int total) implements BuildState {}

    /** Every file is there and stays as it is. */
    record Ready() implements BuildState {}

    /**
     * It could not be built so far.
     *
     * @param tries how often it was tried
     * @param again when it is tried next
     */
    record Failed(Failure cause, int tries, Instant again) implements BuildState {
        public Failed {
            Objects.requireNonNull(cause);
            Objects.requireNonNull(again);
        }
    }

    /** A later release took its place before its files were there; nobody builds it any more. */
    record Overtaken() implements BuildState {}

    /** Why a release could not be built, by what there is to do; what the fault said of itself stands in the log alone. */
    enum Failure implements TextValue {
        /** The disk is full. */
        NO_ROOM("no-room"),
        /** The memory was too small. */
        NO_MEMORY("no-memory"),
        /** The place that keeps the files is away as a whole. */
        FILES_AWAY("files-away"),
        DATABASE_AWAY("database-away"),
        /** A stored file is missing or damaged. */
        FILE_GONE("file-gone"),
        /** Whatever else; a fault of the program, most likely. */
        OTHER("other");

        /** As systems say it in English, which is what they speak to a server; in another language it is {@link #OTHER}. */
        private static final List<String> FULL =
                List.of("No space left on device", "Disk quota exceeded", "not enough space on the disk");

        private final String value;

        Failure(String value) {
            this.value = value;
        }

        @Override
        public String value() {
            return value;
        }

        /** What is wrong and what to do, for the educator, in whole sentences. */
        public Message message() {
            return Message.of("desk.build.failure." + value);
        }

        /** What a row has; earlier versions put what the fault said of itself there, which is {@link #OTHER}. */
        static Failure stored(String text) {
            return Stream.of(values())
                    .filter(failure -> failure.value.equals(text))
                    .findFirst()
                    .orElse(OTHER);
        }

        /** By what was thrown, or by what it was thrown for. */
        static Failure of(Throwable thrown) {
            return Causes.of(thrown).flatMap(e -> known(e).stream()).findFirst().orElse(OTHER);
        }

        private static Optional<Failure> known(Throwable e) {
            if (e instanceof OutOfMemoryError) {
                return Optional.of(NO_MEMORY);
            }
            if (e instanceof FilesAway) {
                return Optional.of(FILES_AWAY);
            }
            if (e instanceof NoSuchFileException || e instanceof DamagedFileException) {
                return Optional.of(FILE_GONE);
            }
            if (e instanceof SQLException sql && DatabaseAway.is(sql)) {
                return Optional.of(DATABASE_AWAY);
            }
            return e instanceof IOException && isOfFullDisk(String.valueOf(e.getMessage()))
                    ? Optional.of(NO_ROOM)
                    : Optional.empty();
        }

        private static boolean isOfFullDisk(String said) {
            return FULL.stream().anyMatch(said::contains);
        }
    }
}
