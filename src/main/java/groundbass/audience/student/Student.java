package groundbass.audience.student;

import groundbass.post.EmailAddress;
import java.time.Instant;
import java.util.Locale;

/** All that is kept about a student besides their consents and downloads. */
public record Student(StudentId id, EmailAddress email, Locale locale, Instant createdAt) {}
