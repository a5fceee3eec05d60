package groundbass.catalog.educator;

import groundbass.catalog.FieldChecks;
import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
import groundbass.identity.Sha256;
import groundbass.store.DatabaseClock;
import groundbass.store.Unguessable;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** Who may use the desk: the first educator, made with a one-time code, and their passwords. */
public final class Educators {
    private final Jdbi jdbi;
    private final Audit audit;
    private final Clock clock;
    private final EducatorRepository rows;

    public Educators(Jdbi jdbi, Audit audit, Clock clock) {
        this.jdbi = jdbi;
        this.audit = audit;
        this.clock = clock;
        this.rows = new EducatorRepository(jdbi);
    }

    /**
     * Where there is no educator yet, makes a new set-up code (an earlier one stops working). It is kept as a digest
     * only: print it now, it cannot be read again. Empty once there is an educator.
     */
    public Optional<String> firstRun() {
        return jdbi.inTransaction(handle -> {
            if (rows.owner().isPresent()) {
                return Optional.empty();
            }
            String code = Unguessable.toType();
            rows.replaceSetupCode(handle, digest(code), clock.instant());
            return Optional.of(code);
        });
    }

    /** Makes the first educator and uses the code up. A wrong code and a used one are told apart by nothing. */
    public Outcome<Educator> setUp(String code, String name, String email, String password) {
        var problems = new ArrayList<>(problems(name, email, password));
        if (!rows.isSetupCode(digest(code))) {
            problems.add(0, wrongCode());
        }
        if (!problems.isEmpty()) {
            return Outcome.refused(problems);
        }
        String hash = Passwords.hash(password);
        return jdbi.inTransaction(handle -> rows.useUpSetupCode(handle, digest(code))
                ? Outcome.done(insert(handle, name, email, hash))
                : Outcome.refused(List.of(wrongCode())));
    }

    /** Makes an educator without a code: for the operator at the command line, and for the demo. */
    public Outcome<Educator> create(String name, String email, String password) {
        var problems = problems(name, email, password);
        if (!problems.isEmpty()) {
            return Outcome.refused(problems);
        }
        String hash = Passwords.hash(password);
        return jdbi.inTransaction(handle -> rows.findEverByEmail(normal(email)).isPresent()
                ? Outcome.refused("email", "catalog.problem.email.taken")
                : Outcome.done(insert(handle, name, email, hash)));
    }

    /** Who comes first keeps the site. */
    private Educator insert(Handle handle, String name, String email, String hash) {
        var educator = insert(handle, name, email, hash, true);
        if (rows.owner().isEmpty()) {
            rows.setOwner(handle, educator.id());
        }
        return educator;
    }

    private Educator insert(Handle handle, String name, String email, String hash, boolean mayBegin) {
        var educator = new Educator(EducatorId.next(), name.strip(), normal(email), DatabaseClock.of(clock));
        rows.insert(handle, educator, hash, mayBegin);
        audit.append(
                handle, educator.id(), AuditWord.EDUCATOR_CREATED, educator.id().value());
        return educator;
    }

    /** What is wrong with the name and the password of somebody who was invited. */
    public List<FieldProblem> invitedProblems(String name, String email, String password) {
        return problems(name, email, password);
    }

    /** A password as it is stored; it takes a while, so no transaction should be open. */
    public StoredPassword store(String password) {
        return new StoredPassword(Passwords.hash(password));
    }

    /**
     * Opens a desk for somebody who was invited, within the caller's transaction. One that was closed is opened anew only
     * for whoever may begin series, whom the site's owner has invited; the name stays then, since it stands beside what
     * was written at that desk.
     *
     * @param mayBegin whether they may begin series of their own
     * @return empty, and nothing changed, where somebody has a desk under this address, or had one that stays closed
     */
    public Optional<Educator> openDesk(
            Handle handle, String name, String email, StoredPassword password, boolean mayBegin) {
        var known = rows.findEverByEmail(normal(email)).map(EducatorRepository.WithHash::educator);
        if (known.isEmpty()) {
            return Optional.of(insert(handle, name, email, password.hash(), mayBegin));
        }
        return known.map(Educator::id)
                .filter(id -> mayBegin && rows.reopen(handle, id, password.hash()))
                .flatMap(id -> {
                    audit.append(handle, id, AuditWord.EDUCATOR_REOPENED, id.value());
                    return find(id);
                });
    }

    /** The digest of a password; not shown by {@code toString}. */
    public record StoredPassword(String hash) {
        @Override
        public String toString() {
            return "StoredPassword[hidden]";
        }
    }

    /** Lets somebody begin series of their own. */
    public void allowBeginning(Handle handle, EducatorId id) {
        rows.allowBeginning(handle, id);
    }

    /**
     * Closes somebody's desk, with its second factor: whoever opens it anew may have another device. What they wrote stays
     * under their name. Their sessions are the caller's to end.
     */
    public boolean closeDesk(Handle handle, EducatorId by, EducatorId id) {
        if (SecondFactors.delete(handle, id)) {
            audit.append(handle, by, AuditWord.FACTOR_OFF, id.value());
        }
        return rows.close(handle, id, clock.instant());
    }

    /** Until the transaction ends, nobody else opens or closes the desks of these people, or gives them anything. */
    public void lock(Handle handle, List<EducatorId> people) {
        rows.lock(handle, people);
    }

    /** Makes somebody with a desk the one who keeps the site; whoever kept it goes on as a teacher. */
    public void setOwner(Handle handle, EducatorId id) {
        rows.setOwner(handle, id);
        rows.allowBeginning(handle, id);
    }

    /** What somebody is to the site; empty where they have no desk, or it was closed. */
    public Optional<SiteStanding> standing(EducatorId id) {
        return rows.standing(id);
    }

    /** All who have a desk, in the order in which they came. */
    public List<Member> members() {
        return rows.members();
    }

    /** The educator with this address and password. An unknown address takes as long as a wrong password. */
    public Optional<Educator> verify(String email, String password) {
        var found = rows.findByEmail(normal(email));
        if (found.isEmpty()) {
            Passwords.matchNobody(password);
            return Optional.empty();
        }
        return found.filter(known -> Passwords.matches(password, known.hash()))
                .map(EducatorRepository.WithHash::educator);
    }

    /** Changes a password for somebody who knows the present one. Sign-ins elsewhere are the caller's to end. */
    public Outcome<Educator> changePassword(EducatorId id, String present, String chosen) {
        var found = rows.find(id);
        if (found.filter(known -> Passwords.matches(present, known.hash())).isEmpty()) {
            return Outcome.refused("present", "catalog.problem.password.wrong");
        }
        return setPassword(found.orElseThrow().educator(), "chosen", chosen);
    }

    /** Changes name and address for somebody who knows the present password: the address is half of the key. */
    public Outcome<Educator> change(EducatorId id, String name, String email, String present) {
        var found = rows.find(id).orElseThrow();
        List<FieldProblem> problems = who(name, email);
        if (!Passwords.matches(present, found.hash())) {
            problems.add(FieldProblem.of("known", "catalog.problem.password.wrong"));
        }
        return problems.isEmpty()
                ? jdbi.inTransaction(handle -> change(handle, found.educator(), name.strip(), normal(email)))
                : Outcome.refused(problems);
    }

    private Outcome<Educator> change(Handle handle, Educator before, String name, String email) {
        boolean taken = rows.findEverByEmail(email)
                .filter(other -> !other.educator().id().equals(before.id()))
                .isPresent();
        if (taken) {
            return Outcome.refused("email", "catalog.problem.email.taken");
        }
        var educator = new Educator(before.id(), name, email, before.createdAt());
        rows.update(handle, educator);
        audit.append(
                handle, before.id(), AuditWord.EDUCATOR_CHANGED, before.id().value());
        return Outcome.done(educator);
    }

    /** Sets a password without the present one: for the operator at the command line. */
    public Outcome<Educator> resetPassword(String email, String chosen) {
        return rows.findByEmail(normal(email))
                .map(known -> setPassword(known.educator(), "password", chosen))
                .orElse(Outcome.refused("email", "catalog.problem.email.unknown"));
    }

    /** Sets a password for somebody who proved to be this educator otherwise: by a mailed link. */
    public Outcome<Educator> resetPassword(EducatorId id, String chosen) {
        return setPassword(find(id).orElseThrow(), "chosen", chosen);
    }

    private Outcome<Educator> setPassword(Educator educator, String field, String chosen) {
        var problems = Passwords.problems(field, chosen, own(educator.name(), educator.email()));
        if (!problems.isEmpty()) {
            return Outcome.refused(problems);
        }
        String hash = Passwords.hash(chosen);
        jdbi.useTransaction(handle -> {
            rows.setHash(handle, educator.id(), hash);
            audit.append(
                    handle,
                    educator.id(),
                    AuditWord.EDUCATOR_PASSWORD,
                    educator.id().value());
        });
        return Outcome.done(educator);
    }

    public Optional<Educator> find(EducatorId id) {
        return rows.find(id).map(EducatorRepository.WithHash::educator);
    }

    /** Whoever may use the desk, in the order in which they came. */
    public List<Educator> all() {
        return rows.all().stream().map(EducatorRepository.WithHash::educator).toList();
    }

    /** The educator who signs in with this address. */
    public Optional<Educator> withEmail(String email) {
        return rows.findByEmail(normal(email)).map(EducatorRepository.WithHash::educator);
    }

    /**
     * The educator who signs in with this address, where it was not typed at their desk: they are known under it to whoever
     * let them in.
     */
    public Optional<Educator> withProvedEmail(String email) {
        return rows.findByProvedEmail(normal(email)).map(EducatorRepository.WithHash::educator);
    }

    /** Who keeps the site; nobody as long as nobody has a desk. */
    public Optional<Educator> owner() {
        return rows.owner().map(EducatorRepository.WithHash::educator);
    }

    private static List<FieldProblem> who(String name, String email) {
        List<FieldProblem> problems = new ArrayList<>(FieldChecks.line("name", name, 200));
        if (!FieldChecks.isEmail(normal(email))) {
            problems.add(FieldProblem.of("email", "catalog.problem.email", email));
        }
        return problems;
    }

    private List<FieldProblem> problems(String name, String email, String password) {
        var problems = who(name, email);
        problems.addAll(Passwords.problems("password", password, own(name, email)));
        return problems;
    }

    /** What anybody who knows the site knows. */
    private List<String> own(String name, String email) {
        return List.of(name, email, rows.siteName());
    }

    private static FieldProblem wrongCode() {
        return FieldProblem.of("code", "catalog.problem.code");
    }

    private static String normal(String email) {
        return email.strip().toLowerCase(Locale.ROOT);
    }

    /** The code has 140 random bits, so that a fast digest is enough. */
    private static Sha256 digest(String code) {
        return Sha256.of(code.replaceAll("\\s", "").toLowerCase(Locale.ROOT).getBytes(StandardCharsets.UTF_8));
    }
}
