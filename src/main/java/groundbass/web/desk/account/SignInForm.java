package groundbass.web.desk.account;

import groundbass.web.desk.access.FormParameters;
import groundbass.web.shell.Next;
import io.javalin.http.Context;
import java.util.Optional;

/** Who wants to come in, and where to then. The text form keeps the password to itself. */
record SignInForm(String email, String password, String next) {
    static SignInForm read(Context ctx) {
        var wish = Optional.of(FormParameters.text(ctx, "next"));
        return new SignInForm(
                FormParameters.text(ctx, "email"), FormParameters.text(ctx, "password"), Next.orElse(wish, "/desk"));
    }

    @Override
    public String toString() {
        return "SignInForm[hidden]";
    }
}
