package org.benchwright.cli.internal;

import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;

import org.benchwright.language.proof.FaultProof;
import org.benchwright.language.proof.FlowDiagram;
import org.benchwright.language.proof.FlowPlace;
import org.benchwright.language.proof.FlowWay;
import org.benchwright.language.proof.MeasurementProof;
import org.benchwright.language.proof.PathCount;
import org.benchwright.language.proof.ProcedureProof;
import org.benchwright.language.proof.ProofPath;
import org.benchwright.language.proof.SoakProof;
import org.benchwright.language.proof.TimeSpan;
import org.benchwright.language.proof.Times;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;

/** What procedures prove, for machines: times as ISO 8601, probabilities as numbers from 0 to 1, numbers of paths in full. */
final class ProofJson {

    private static final String FORMAT = "benchwright.what-it-proves/1";

    private ProofJson() {
    }

    static String of(List<ProcedureProof> proofs, Optional<Duration> whatIf) {
        JsonObject all = new JsonObject();
        all.addProperty("format", FORMAT);
        all.add("procedures", array(proofs, proof -> proof(proof, whatIf)));
        Gson gson = new GsonBuilder().setPrettyPrinting().disableHtmlEscaping().create();
        return gson.toJson(all);
    }

    private static <T> JsonArray array(List<T> items, Function<T, JsonElement> item) {
        JsonArray array = new JsonArray();
        items.forEach(each -> array.add(item.apply(each)));
        return array;
    }

    private static JsonArray words(List<String> words) {
        return array(words, JsonPrimitive::new);
    }

    private static JsonObject proof(ProcedureProof proof, Optional<Duration> whatIf) {
        JsonObject json = new JsonObject();
        json.addProperty("name", proof.name());
        json.addProperty("title", proof.title());
        json.addProperty("revision", proof.revision());
        json.add("flow", flow(proof.flow()));
        json.add("paths", paths(proof.paths()));
        json.add("times", times(proof.times()));
        json.add("faults", array(proof.faults(), ProofJson::fault));
        json.add("measurements", array(proof.measurements(), ProofJson::measurement));
        json.add("soaks", array(proof.soaks(), soak -> soak(soak, whatIf)));
        return json;
    }

    // ---- flow

    private static JsonObject flow(FlowDiagram flow) {
        JsonObject json = new JsonObject();
        json.add("places", array(flow.places(), ProofJson::place));
        json.add("ways", array(flow.ways(), ProofJson::way));
        return json;
    }

    private static JsonObject place(FlowPlace place) {
        JsonObject json = new JsonObject();
        json.addProperty("id", place.id());
        json.addProperty("kind", word(place.kind()));
        json.addProperty("name", place.name());
        json.addProperty("stage", place.stage());
        json.addProperty("words", place.words());
        json.add("marks", words(place.marks().stream().sorted().map(ProofJson::word).toList()));
        return json;
    }

    private static JsonObject way(FlowWay way) {
        JsonObject json = new JsonObject();
        json.addProperty("from", way.from());
        json.addProperty("to", way.to());
        json.addProperty("kind", word(way.kind()));
        json.add("reasons", words(way.reasons()));
        way.atMost().ifPresent(most -> json.addProperty("atMost", most));
        return json;
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private static JsonObject paths(PathCount paths) {
        JsonObject json = new JsonObject();
        paths.count().ifPresent(count -> json.addProperty("count", count));
        json.addProperty("endless", paths.endless());
        JsonObject ending = new JsonObject();
        paths.ending().forEach((verdict, count) -> ending.addProperty(verdict.word(), count));
        json.add("ending", ending);
        json.add("listed", array(paths.listed(), ProofJson::path));
        return json;
    }

    private static JsonObject path(ProofPath path) {
        JsonObject json = new JsonObject();
        json.add("turns", array(path.turns(), turn -> {
            JsonObject at = new JsonObject();
            at.addProperty("place", turn.place());
            at.addProperty("words", turn.words());
            return at;
        }));
        json.addProperty("steps", path.steps());
        json.addProperty("verdict", path.verdict().word());
        json.addProperty("reason", path.reason());
        return json;
    }

    // ---- times

    private static JsonObject times(Times times) {
        JsonObject json = new JsonObject();
        times.typical().ifPresent(typical -> json.add("typical", span(typical)));
        JsonObject verdicts = new JsonObject();
        times.byVerdict().forEach((verdict, range) -> {
            JsonObject between = new JsonObject();
            between.add("shortest", span(range.shortest()));
            between.add("longest", span(range.longest()));
            verdicts.add(verdict.word(), between);
        });
        json.add("byVerdict", verdicts);
        json.add("stages", array(times.stages(), stage -> {
            JsonObject one = span(stage.time());
            one.addProperty("title", stage.title());
            stage.atMost().ifPresent(most -> one.addProperty("mayLast", most.toString()));
            one.addProperty("looks", stage.looks());
            return one;
        }));
        json.add("stepsWithoutTime", words(times.without()));
        return json;
    }

    private static JsonObject span(TimeSpan span) {
        JsonObject json = new JsonObject();
        json.addProperty("bench", span.bench().toString());
        json.addProperty("attended", span.attended().toString());
        return json;
    }

    // ---- faults, risks, soaks

    private static JsonObject fault(FaultProof fault) {
        JsonObject json = new JsonObject();
        json.addProperty("code", fault.code());
        json.addProperty("title", fault.title());
        json.add("revealedAt", array(fault.reveals(), reveal -> {
            JsonObject at = new JsonObject();
            at.addProperty("place", reveal.place());
            at.addProperty("how", word(reveal.how()));
            at.addProperty("expects", reveal.words());
            at.addProperty("onDemand", reveal.onDemand());
            return at;
        }));
        return json;
    }

    private static JsonObject measurement(MeasurementProof measurement) {
        JsonObject json = new JsonObject();
        json.addProperty("step", measurement.step());
        json.addProperty("name", measurement.name());
        json.addProperty("limits", measurement.limits().toString());
        json.addProperty("rule", measurement.ruleWord());
        measurement.expanded().ifPresent(most -> json.addProperty("uncertaintyAtMost", most.toString()));
        json.addProperty("coverage", measurement.coverage());
        json.addProperty("readings", measurement.readings());
        json.addProperty("timesAtMost", measurement.mostTimes());
        measurement.combinedWord().ifPresent(how -> json.addProperty("combined", how));
        json.addProperty("values", measurement.cells());
        measurement.risks().ifPresent(risks -> {
            json.addProperty("acceptsBeyondLimit", risks.acceptBeyond());
            json.addProperty("acceptsBeyondLimitOnce", risks.acceptBeyondOnce());
            json.addProperty("rejectsInsideLimit", risks.rejectInside());
            json.addProperty("globalFalseAccept", risks.accept());
            json.addProperty("globalFalseReject", risks.reject());
            risks.ratio().ifPresent(ratio -> json.addProperty("uncertaintyRatio", ratio));
            json.addProperty("assumedMiddle", risks.middle());
            json.addProperty("assumedDeviation", risks.deviation());
        });
        return json;
    }

    private static JsonObject soak(SoakProof soak, Optional<Duration> whatIf) {
        JsonObject json = new JsonObject();
        json.addProperty("name", soak.name());
        json.addProperty("title", soak.title());
        json.addProperty("lasting", soak.lasting().toString());
        json.addProperty("stopStays", soak.latching());
        json.addProperty("watched", soak.watched());
        json.addProperty("probability", soak.probability());
        json.addProperty("meanInterval", soak.meanInterval().toString());
        soak.claim().ifPresent(claim -> json.addProperty("claimHolds", soak.supportsClaim()));
        json.add("lengths", array(soak.lengths(whatIf), length -> {
            JsonObject one = new JsonObject();
            one.addProperty("length", length.length().toString());
            one.addProperty("revealsFaultsEvery", length.longestRevealed().toString());
            one.addProperty("revealed", length.revealed());
            one.addProperty("hidden", length.hidden());
            one.addProperty("stationTime", length.stationTime().toString());
            one.addProperty("looks", length.looks());
            return one;
        }));
        return json;
    }
}
