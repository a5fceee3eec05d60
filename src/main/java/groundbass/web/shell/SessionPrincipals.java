package groundbass.web.shell;

import groundbass.audience.student.SecretToken;
import groundbass.audience.student.Session;
import groundbass.audience.student.Sessions;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.educator.FactorDemand;
import java.util.Optional;

/** Finds visitors by the session rows. */
public final class SessionPrincipals implements PrincipalResolver {
    private final Sessions sessions;
    private final Educators educators;
    private final FactorDemand demand;

    public SessionPrincipals(Sessions sessions, Educators educators, FactorDemand demand) {
        this.sessions = sessions;
        this.educators = educators;
        this.demand = demand;
    }

    @Override
    public Principal of(Optional<String> token) {
        return token.map(SecretToken::new)
                .flatMap(sessions::find)
                .map(Session::person)
                .map(person -> person.either(student -> Principal.of(student), this::atDesk))
                .orElse(Principal.UNKNOWN);
    }

    /** Whoever's desk was closed at this moment is nobody from now on. */
    private Principal atDesk(EducatorId educator) {
        return educators
                .standing(educator)
                .map(standing ->
                        demand.lacks(educator) ? Principal.lackingFactor(educator) : Principal.of(educator, standing))
                .orElse(Principal.UNKNOWN);
    }
}
