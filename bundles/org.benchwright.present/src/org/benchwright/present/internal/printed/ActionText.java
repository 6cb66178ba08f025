package org.benchwright.present.internal.printed;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.core.PrintedText.Asked;
import org.benchwright.core.PrintedText.Part;
import org.benchwright.core.PrintedText.Told;
import org.benchwright.engine.Demand;
import org.benchwright.engine.Place;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Action.AxisValue;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;
import org.benchwright.present.internal.Indications;
import org.benchwright.present.internal.Questions;

/** What one action of a step asks, in the words of the card that will ask it. */
final class ActionText {

    /** No test runs yet; nothing that is printed depends on when it will. */
    private static final Moment NO_MOMENT = new Moment(Instant.EPOCH, 1, Duration.ZERO);

    private final Plan plan;
    private final Place place;
    private final MoveText moves;
    private final DecisionText decisions;
    private final Questions questions;
    private final Indications indications;
    private final Optional<Move> common;

    /** @param common where each check of the step leads that does not conform, if they all lead there; said by the step */
    ActionText(Plan plan, Place place, MoveText moves, Optional<Move> common) {
        this.plan = plan;
        this.place = place;
        this.moves = moves;
        this.common = common;
        decisions = new DecisionText(moves);
        questions = new Questions(plan);
        indications = new Indications(plan.family());
    }

    /** Where a check leads that does not conform; empty for what is no check. */
    static Optional<Move> failed(Action action) {
        if (action instanceof Action.Expect a) {
            return Optional.of(a.failed());
        } else if (action instanceof Action.Measure a) {
            return Optional.of(a.rejected());
        } else if (action instanceof Action.Derive a) {
            return Optional.of(a.rejected());
        } else if (action instanceof Action.Grid a) {
            return Optional.of(a.rejected());
        } else if (action instanceof Action.Confirm a) {
            return Optional.of(a.failed());
        } else if (action instanceof Action.Compare a) {
            return Optional.of(a.failed());
        } else if (action instanceof Action.Choose a) {
            return Optional.of(a.failed());
        } else if (action instanceof Action.Release a) {
            return Optional.of(a.failed());
        }
        return Optional.empty();
    }

    /** What an action asks, one after the other. */
    List<? extends Part> of(Action action, boolean markFollows) {
        if (action instanceof Action.Energise a) {
            return List.of(markFollows ? confirmedByMark(a) : asked(new Demand.Switch(place, a.item(), true)));
        } else if (action instanceof Action.Isolate a) {
            return List.of(asked(new Demand.Switch(place, a.item(), false)));
        } else if (action instanceof Action.Mark a) {
            return List.of(asked(new Demand.PressMark(place, a), PrintedWords.MARK_COUNTS.text(a.id())));
        } else if (action instanceof Action.Expect a) {
            return List.of(expected(a));
        } else if (action instanceof Action.Apply a) {
            return List.of(asked(new Demand.Apply(place, a)));
        } else if (action instanceof Action.Wait a) {
            return List.of(asked(new Demand.AwaitTime(place, a, NO_MOMENT)));
        } else if (action instanceof Action.End a) {
            return List.of(silent(PrintedWords.END.text(moves.of(a.conclusion()))));
        } else if (action instanceof Action.Go a) {
            return List.of(silent(PrintedWords.GO.text(moves.of(a.to()))));
        }
        return value(action);
    }

    private List<? extends Part> value(Action action) {
        boolean said = common.isPresent();
        if (action instanceof Action.Measure a) {
            return List.of(asked(new Demand.TakeMeasurement(place, a, List.of()), decisions.of(a, said).toArray(String[]::new)));
        } else if (action instanceof Action.Derive a) {
            return List.of(new Told(PrintedWords.DERIVE.text(Questions.spaced(a.id()), DecisionText.of(a.value()), a.limits().toString()),
                    decisions.of(a, said), ""));
        } else if (action instanceof Action.Grid a) {
            return List.of(grid(a, said));
        }
        return entry(action);
    }

    private List<? extends Part> entry(Action action) {
        if (action instanceof Action.EnterText a) {
            return List.of(asked(new Demand.EnterText(place, a)));
        } else if (action instanceof Action.EnterFaultLog a) {
            return List.of(asked(new Demand.EnterFaultLog(place, a)));
        } else if (action instanceof Action.Attach a) {
            return List.of(asked(new Demand.AttachFile(place, a)));
        } else if (action instanceof Action.Confirm a) {
            return List.of(check(new Demand.ConfirmStatement(place, a), a.failed()));
        } else if (action instanceof Action.Compare a) {
            return List.of(check(new Demand.CompareEntries(place, a), a.failed()));
        } else if (action instanceof Action.Release a) {
            return List.of(check(new Demand.Release(place, a.id(), a.by(), a.statement()), a.failed()));
        } else if (action instanceof Action.Choose a) {
            return Stream.concat(a.only().stream().map(item -> check(new Demand.ConfirmItem(place, a, item, true), a.failed())),
                    a.spare().stream().map(item -> check(new Demand.ConfirmItem(place, a, item, false), a.failed()))).toList();
        } else if (action instanceof Action.Branch a) {
            return List.of(branch(a));
        }
        throw new IllegalStateException("no words for " + action);
    }

    private Asked confirmedByMark(Action.Energise action) {
        String instruction = questions.of(new Demand.Switch(place, action.item(), true)).instruction();
        return new Asked(instruction, List.of(PrintedWords.MARK_SWITCHES.text()), "");
    }

    private Asked expected(Action.Expect expect) {
        List<String> notes = new ArrayList<>(List.of(questions.of(new Demand.AnswerExpectation(place, expect)).question()));
        otherwise(notes, expect.failed());
        return new Asked(indications.line(expect), notes, "");
    }

    private Asked branch(Action.Branch branch) {
        Action.Confirm asked = new Action.Confirm(branch.id(), branch.statement(), plan.end());
        String leads = branch.to().map(moves::of).orElseGet(PrintedWords.PASS_OVER::text);
        List<String> notes = new ArrayList<>(List.of((branch.when() ? PrintedWords.BRANCH_YES : PrintedWords.BRANCH_NO).text(leads)));
        branch.remembered().ifPresent(key -> notes.add(PrintedWords.BRANCH_ONCE.text()));
        return asked(new Demand.ConfirmStatement(place, asked), notes.toArray(String[]::new));
    }

    private Asked grid(Action.Grid grid, boolean said) {
        List<AxisValue> first = grid.axes().stream().map(axis -> axis.values().get(0)).toList();
        int cells = grid.axes().stream().mapToInt(axis -> axis.values().size()).reduce(1, Math::multiplyExact);
        List<String> notes = new ArrayList<>(List.of(PrintedWords.GRID_CELLS.text(cells)));
        grid.axes().forEach(axis -> notes.add(axis(axis)));
        notes.add(PrintedWords.GRID_JUDGED.text(DecisionText.of(grid.judged()), grid.limits().toString()));
        grid.instrument().map(this::title).ifPresent(title -> notes.add(PrintedWords.GRID_WITH.text(title)));
        notes.addAll(decisions.of(grid, said));
        return asked(new Demand.ReadCell(place, grid, 0, first), notes.toArray(String[]::new));
    }

    private String axis(Action.Axis axis) {
        String values = axis.values().stream().map(AxisValue::label).collect(Collectors.joining(", "));
        String name = Questions.spaced(axis.name());
        return axis.instrument().map(this::title).map(title -> PrintedWords.GRID_AXIS_WITH.text(name, values, title))
                .orElseGet(() -> PrintedWords.GRID_AXIS.text(name, values));
    }

    private String title(String instrument) {
        return plan.instrument(instrument).map(InstrumentSpec::title).orElse(instrument);
    }

    private Asked check(Demand demand, Move failed) {
        List<String> notes = new ArrayList<>();
        otherwise(notes, failed);
        return asked(demand, notes.toArray(String[]::new));
    }

    private void otherwise(List<String> notes, Move failed) {
        if (common.isEmpty()) {
            notes.add(PrintedWords.OTHERWISE.text(moves.of(failed)));
        }
    }

    private Asked asked(Demand demand, String... notes) {
        return asked(questions.of(demand), List.of(notes), "");
    }

    /** A question of a card: what to do, what is asked, how it is answered. */
    static Asked asked(Questions.Question question, List<String> notes, String about) {
        String words = joined(question.instruction().strip(), question.question()).strip();
        List<String> all = new ArrayList<>();
        if (!question.parts().isEmpty()) {
            all.add(PrintedWords.HOW.text(String.join("; ", question.parts())));
        }
        all.addAll(notes);
        return new Asked(words, all, about);
    }

    /** One after the other; a label that is no sentence is set apart from the sentence behind it. */
    private static String joined(String first, String second) {
        boolean whole = first.isEmpty() || ".!?:;".indexOf(first.charAt(first.length() - 1)) >= 0;
        return first + (whole ? " " : ": ") + second;
    }

    private static Part silent(String words) {
        return new Told(words, List.of(), "");
    }
}
