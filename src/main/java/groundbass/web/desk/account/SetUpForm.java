package groundbass.web.desk.account;

import groundbass.web.desk.access.Typed;
import io.javalin.http.Context;

/** The first educator as typed. The text form keeps code and password to itself. */
record SetUpForm(String code, String name, String email, String password) {
    static final SetUpForm EMPTY = new SetUpForm("", "", "", "");

    static SetUpForm read(Context ctx) {
        return new SetUpForm(
                Typed.text(ctx, "code"),
                Typed.text(ctx, "name"),
                Typed.text(ctx, "email"),
                Typed.text(ctx, "password"));
    }

    @Override
    public String toString() {
        return "SetUpForm[hidden]";
    }
}
