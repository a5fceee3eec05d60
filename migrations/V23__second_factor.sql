-- A second factor of those who teach: a secret that their app shares with us (RFC 6238), and codes on paper that work once
-- each. Portable: H2 and PostgreSQL run the same text.
create table second_factor (
    educator_id varchar(16) not null primary key references educator (id) on delete cascade,
    secret      varchar(64) not null, -- Base32 (RFC 4648)
    last_step   bigint      not null, -- the step of time of the last code that was taken: none is taken twice
    created_at  timestamp with time zone not null
);

create table recovery_code (
    educator_id varchar(16) not null references second_factor (educator_id) on delete cascade,
    code_hash   varchar(64) not null,
    primary key (educator_id, code_hash)
);
