package org.benchwright.language.internal.text;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

import org.benchwright.core.LampColour;
import org.benchwright.core.SignalWord;
import org.benchwright.core.Verdict;
import org.benchwright.model.AttachmentKind;
import org.benchwright.model.Combination;
import org.benchwright.model.CurrentKind;
import org.benchwright.model.DecisionRule;
import org.benchwright.model.FlashSpeed;
import org.benchwright.model.InstrumentUse;
import org.benchwright.model.KeptBy;
import org.benchwright.model.LightPattern;
import org.benchwright.model.LogCondition;
import org.benchwright.model.Numeral;
import org.benchwright.model.PointState;
import org.benchwright.model.PointTable;
import org.benchwright.model.Releaser;
import org.benchwright.model.Sign;
import org.benchwright.model.StopKind;
import org.benchwright.model.WatchProtocol;
import org.eclipse.xtext.conversion.IValueConverter;
import org.eclipse.xtext.conversion.ValueConverter;
import org.eclipse.xtext.conversion.impl.AbstractDeclarativeValueConverterService;

/** What the words and numbers of a text stand for. */
public class ProcedureValueConverters extends AbstractDeclarativeValueConverterService {

    private final IValueConverter<BigDecimal> numbers = new NumberConverter();
    private final IValueConverter<Integer> counts = new CountConverter();

    /** Texts in double quotes. */
    @ValueConverter(rule = "STRING")
    public IValueConverter<String> text() {
        return new QuotedTextConverter();
    }

    /** Whole numbers. */
    @ValueConverter(rule = "INT")
    public IValueConverter<Integer> wholeNumber() {
        return counts;
    }

    /** Whole numbers that have to be there. */
    @ValueConverter(rule = "Count")
    public IValueConverter<Integer> count() {
        return counts;
    }

    /** Whole numbers that may be absent. */
    @ValueConverter(rule = "Index")
    public IValueConverter<Integer> index() {
        return counts;
    }

    /** Numbers with sign and decimal point; their digits are kept. */
    @ValueConverter(rule = "Number")
    public IValueConverter<BigDecimal> number() {
        return numbers;
    }

    /** Numbers without a sign. */
    @ValueConverter(rule = "UnsignedNumber")
    public IValueConverter<BigDecimal> unsignedNumber() {
        return numbers;
    }

    /** Colours of lamps. */
    @ValueConverter(rule = "LampColour")
    public IValueConverter<LampColour> lampColour() {
        return words(LampColour.values());
    }

    /** Signal words of hazards. */
    @ValueConverter(rule = "SignalWord")
    public IValueConverter<SignalWord> signalWord() {
        return words(SignalWord.values());
    }

    /** Verdicts. */
    @ValueConverter(rule = "Verdict")
    public IValueConverter<Verdict> verdict() {
        return words(Verdict.values());
    }

    /** Kinds of current. */
    @ValueConverter(rule = "CurrentKind")
    public IValueConverter<CurrentKind> currentKind() {
        return words(CurrentKind.DC, CurrentKind.AC);
    }

    /** What keeps an item. */
    @ValueConverter(rule = "KeptBy")
    public IValueConverter<KeptBy> keptBy() {
        return words(KeptBy.values());
    }

    /** A latching stop. */
    @ValueConverter(rule = "StopStays")
    public IValueConverter<StopKind> stopStays() {
        return words(StopKind.STAYS);
    }

    /** A stop that ends by itself. */
    @ValueConverter(rule = "StopRestarts")
    public IValueConverter<StopKind> stopRestarts() {
        return words(StopKind.RESTARTS);
    }

    /** Patterns without a rate. */
    @ValueConverter(rule = "StillPattern")
    public IValueConverter<LightPattern> stillPattern() {
        return words(LightPattern.OFF, LightPattern.STEADY);
    }

    /** Patterns with a rate. */
    @ValueConverter(rule = "FlashingPattern")
    public IValueConverter<LightPattern> flashingPattern() {
        return words(LightPattern.FLASHING);
    }

    /** Flash rates by name. */
    @ValueConverter(rule = "FlashSpeed")
    public IValueConverter<FlashSpeed> flashSpeed() {
        return words(FlashSpeed.SLOW, FlashSpeed.NORMAL);
    }

    /** What an instrument does. */
    @ValueConverter(rule = "InstrumentUse")
    public IValueConverter<InstrumentUse> instrumentUse() {
        return words(InstrumentUse.values());
    }

    /** Decision rules. */
    @ValueConverter(rule = "DecisionRule")
    public IValueConverter<DecisionRule> decisionRule() {
        return words(DecisionRule.values());
    }

    /** How readings combine. */
    @ValueConverter(rule = "Combination")
    public IValueConverter<Combination> combination() {
        return words(Combination.values());
    }

    /** Who releases. */
    @ValueConverter(rule = "Releaser")
    public IValueConverter<Releaser> releaser() {
        return words(Releaser.values());
    }

    /** What is attached. */
    @ValueConverter(rule = "AttachmentKind")
    public IValueConverter<AttachmentKind> attachmentKind() {
        return words(AttachmentKind.values());
    }

    /** In which condition a log is entered. */
    @ValueConverter(rule = "LogCondition")
    public IValueConverter<LogCondition> logCondition() {
        return words(LogCondition.AS_FOUND, LogCondition.AS_LEFT);
    }

    /** What a unit is asked by. */
    @ValueConverter(rule = "WatchProtocol")
    public IValueConverter<WatchProtocol> watchProtocol() {
        return words(WatchProtocol.values());
    }

    /** Tables of bits. */
    @ValueConverter(rule = "BitTable")
    public IValueConverter<PointTable> bitTable() {
        return words(PointTable.COIL, PointTable.INPUT);
    }

    /** Tables of registers. */
    @ValueConverter(rule = "RegisterTable")
    public IValueConverter<PointTable> registerTable() {
        return words(PointTable.HOLDING_REGISTER, PointTable.INPUT_REGISTER);
    }

    /** A node. */
    @ValueConverter(rule = "NodeTable")
    public IValueConverter<PointTable> nodeTable() {
        return words(PointTable.NODE);
    }

    /** The server itself. */
    @ValueConverter(rule = "ServerTable")
    public IValueConverter<PointTable> serverTable() {
        return words(PointTable.SERVER);
    }

    /** How bits are taken for a number. */
    @ValueConverter(rule = "Numeral")
    public IValueConverter<Numeral> numeral() {
        return words(Numeral.UNSIGNED, Numeral.SIGNED, Numeral.FLOAT);
    }

    /** What a point reads, where that is no number. */
    @ValueConverter(rule = "PointState")
    public IValueConverter<PointState> pointState() {
        return words(PointState.ON, PointState.OFF, PointState.RUNNING);
    }

    /** Signs of an expression. */
    @ValueConverter(rule = "Sign")
    public IValueConverter<Sign> sign() {
        Map<String, Sign> signs = new LinkedHashMap<>();
        for (Sign sign : Sign.values()) {
            signs.put(sign.getLiteral(), sign);
        }
        return new WordConverter<>(signs);
    }

    @SafeVarargs
    private static <E extends Enum<E>> IValueConverter<E> words(E... values) {
        Map<String, E> byWord = new LinkedHashMap<>();
        for (E value : values) {
            byWord.put(value.name().toLowerCase(Locale.ROOT).replace('_', ' '), value);
        }
        return new WordConverter<>(byWord);
    }
}
