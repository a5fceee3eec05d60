package groundbass.audience.download;

import groundbass.audience.student.StudentId;
import java.util.Optional;

/** Who takes a file. */
public sealed interface Requester {
    /** The student, if it is known who. */
    Optional<StudentId> student();

    /** A digest that finds the same visitor again for a day, if it is not known who. */
    Optional<String> visitor(VisitorKey key);

    /** Whether this looks like a program that takes everything. */
    boolean isRobot();

    /** Somebody signed in, never taken for a robot. */
    record Known(StudentId id) implements Requester {
        @Override
        public Optional<StudentId> student() {
            return Optional.of(id);
        }

        @Override
        public Optional<String> visitor(VisitorKey key) {
            return Optional.empty();
        }

        @Override
        public boolean isRobot() {
            return false;
        }
    }

    /** An educator who is signed in to the desk: trying a file out is recorded, and counted nowhere. */
    record AtTheDesk() implements Requester {
        @Override
        public Optional<StudentId> student() {
            return Optional.empty();
        }

        @Override
        public Optional<String> visitor(VisitorKey key) {
            return Optional.empty();
        }

        @Override
        public boolean isRobot() {
            return false;
        }
    }

    /**
     * Somebody else; nothing of it is stored or shown.
     *
     * @param network that the address belongs to, as limits tell callers apart
     */
    record Anonymous(String address, String network, String userAgent) implements Requester {
        /** Whose address is all of their network. */
        public Anonymous(String address, String userAgent) {
            this(address, address, userAgent);
        }

        @Override
        public Optional<StudentId> student() {
            return Optional.empty();
        }

        @Override
        public Optional<String> visitor(VisitorKey key) {
            return Optional.of(key.digest(address, userAgent));
        }

        @Override
        public boolean isRobot() {
            return Robots.isRobot(userAgent);
        }

        /** A digest that finds their network again for a day. */
        public String network(VisitorKey key) {
            return key.digest("network", network);
        }

        @Override
        public String toString() {
            return "Anonymous[hidden]";
        }
    }
}
